import { occasion } from '../../figures/occasions.js';
import type { BusStudy } from '../../figures/study.js';
import { cableNeeds } from '../../limits/cable.js';
import type { Bus, Cable } from '../../network.js';
import { rs485Kinds } from '../../network.js';
import { formatNumber } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { cableFaults } from './cable-faults.js';
import { cablePlaceOf, isShielded } from './cables.js';
import { exampleCable, exampleFile, exampleHead, exampleStore } from './example.js';
import { pullFixes } from './pull-on.js';

const withCommon = (device: string) => device.replace('shield "SH"', 'shield "SH" common "0V"');
const boardWithCommon = withCommon(`device CaseBoard {
  port field : rs485 {
    terminals + "D+" - "D-" shield "SH"
    load 1/8
    polarity required
    address dial 1..99
  }
}
`);
const statements = (colours: string) => `from head : SiteHead terminate switch
38 ft to caseA1 : CaseBoard address 11
22 ft to caseA2 : CaseBoard address 12 terminate resistor 120 ohm
shield earthed at head
${colours}`;

export const conductorShortSupply: BusRule = {
  id: 'conductor-short-supply',
  scope: 'bus',
  occasions: occasion.common,
  severity: 'warning',
  kinds: ['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485', 'can', 'ethernet'],
  explanation: {
    what:
      'A cable has fewer conductors than the bus needs: a common for devices that have a terminal for it, or the pairs ' +
      'of an Ethernet link.',
    why:
      'Receivers judge both wires of the pair against their own common and stand only -7 to +12 V of difference. ' +
      'Without a conductor for it, commons are joined by accident only, through earth or the shield.',
    field:
      'Transceivers fail after storms or when machines start, and devices on other supplies drop out together. ' +
      'An Ethernet link comes up slower than planned or not at all.',
    mend:
      'Pull a cable with one conductor more (a pair and a single, or two pairs). Do not use the shield or its drain as ' +
      'the common.',
    bad:
      exampleCable +
      exampleCable
        .replace('ShieldedPair22', 'ShieldedTwoPair22')
        .replace('pairs 1', 'pairs 2')
        .replace('white, blue', 'white, blue, orange, black') +
      withCommon(exampleHead) +
      boardWithCommon +
      exampleStore(statements('colours + white - blue shield drain')),
    good: exampleFile(statements('colours + white - blue shield drain common orange'))
      .replace('twisted pairs 1', 'twisted pairs 2')
      .replace('colours white, blue\n', 'colours white, blue, orange, black\n')
      .replaceAll('shield "SH"', 'shield "SH" common "0V"'),
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 3.4.2 and 3.6 (the third conductor)',
      'ANSI/TIA/EIA-485-A, common-mode range -7 to +12 V',
      'From memory of IEEE 802.3: two pairs up to 100 Mbit/s, four pairs above',
    ],
    since: '0.1.0',
  },
  check(study, report) {
    const { bus, runsByCable } = study;
    const need = needOf(study);
    if (!need) return;
    for (const [cable, runs] of runsByCable) {
      const count = conductorsOf(cable);
      if (count === undefined || need.conductors <= count) continue;
      report({
        message: `cable ${cable.name} has ${formatNumber(count)} conductors and bus ${bus.name} needs ${need.conductors} (${need.why}); pull one with more`,
        place: cablePlaceOf(bus, runs[0]),
        related: [
          { message: `cable ${cable.name} is described here`, place: cable.place },
          ...(need.place ? [{ message: 'the common is asked for here', place: need.place }] : []),
        ],
        at: cable.name,
        fixes: () =>
          pullFixes(
            study,
            cable,
            runs,
            (other) => need.conductors <= (conductorsOf(other) ?? 0) && replaces(study, cable, other),
          ),
      });
    }
  },
};

/** Whether a cable suits the kind of bus, and has a shield where the one that it replaces has. */
function replaces({ bus }: BusStudy, cable: Cable, other: Cable): boolean {
  const needs = bus.kind && cableNeeds[bus.kind];
  if (isShielded(cable) && !isShielded(other)) return false;
  return !needs || cableFaults(other, needs, true).length === 0;
}

/** The shield and its drain are no conductors of a circuit. */
function conductorsOf({ pairs, colours }: Cable): number | undefined {
  if (pairs) return Math.max(2 * pairs, colours.length);
  return colours.length || undefined;
}

function needOf({ bus, census }: BusStudy): { conductors: number; why: string; place?: Bus['place'] } | undefined {
  if (bus.kind === 'ethernet') {
    if (!bus.rate) return { conductors: 4, why: 'two pairs' };
    return bus.rate.value <= 100e6
      ? { conductors: 4, why: 'two pairs up to 100 Mbit/s' }
      : { conductors: 8, why: 'four pairs above 100 Mbit/s' };
  }
  if (bus.kind === undefined || !(rs485Kinds.has(bus.kind) || bus.kind === 'can')) return undefined;
  const { colours } = bus;
  if (colours?.common !== undefined) return { conductors: 3, why: 'the pair and its common', place: colours.place };
  if (!census.outfits.some(({ port }) => port?.terminals.common !== undefined)) return undefined;
  const asking = bus.landings.filter(({ port }) => port?.terminals.common !== undefined);
  const [first, second] = asking;
  // One lone terminal has nothing to be joined with.
  if (!first || !second) return undefined;
  return { conductors: 3, why: `the pair and the common of ${first.name} and ${second.name}`, place: first.place };
}
