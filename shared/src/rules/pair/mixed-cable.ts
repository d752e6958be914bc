import { occasion } from '../../figures/occasions.js';
import { cableNeeds } from '../../limits/cable.js';
import type { Cable } from '../../network.js';
import { conductorArea } from '../../physics/conductor.js';
import { formatOhms, metres } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { cableFaults } from './cable-faults.js';
import { cablePlaceOf, isShielded, mainCable, recable, sizeOf } from './cables.js';
import { exampleFile, soundFile, soundRemarks } from './example.js';

/** Impedances that differ by less are within the usual tolerance of one cable (common practice, no published source). */
const alikeImpedance = 0.1;
/** One gauge number is 26 % of area (ASTM B258); half a step is where metric sizes stop being the same as a gauge. */
const alikeArea = 0.12;

export const mixedCable: BusRule = {
  id: 'mixed-cable',
  scope: 'bus',
  occasions: occasion.severalCables,
  severity: 'warning',
  kinds: ['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485', 'free-topology', 'can'],
  explanation: {
    what: 'A part of the bus runs on a cable whose impedance or gauge differs from that of the rest.',
    why:
      'Where the impedance changes, a part of every edge is thrown back: from Z1 to Z2 the share is ' +
      '(Z2 - Z1) / (Z2 + Z1). One pair of terminators can match only one of the two cables. A change of gauge ' +
      'changes the resistance per length, so that meter readings no longer tell distance.',
    field:
      'It works on the bench and at low rates; at higher ones a few devices near the joint miss polls. Lengths worked ' +
      'out from resistance come out wrong.',
    mend: 'Pull the whole bus on one cable. Where a stretch must differ, keep the impedance the same.',
    bad: `cable Shielded18 {
  conductor 18 AWG stranded
  twisted pairs 1
  shield foil drain
  impedance 95 ohm
}
${exampleFile(`from head : SiteHead terminate switch
38 ft to caseA1 : CaseBoard address 11
22 ft on Shielded18 to caseA2 : CaseBoard address 12 terminate resistor 120 ohm
${soundRemarks}`)}`,
    good: soundFile,
    sources: [
      'The reflection coefficient of a line, any textbook of transmission lines',
      'From memory of the free topology transceiver data books: different cables should not be mixed in one segment',
      'Common practice, no published source, for the 10 % and the half gauge that count as alike',
    ],
    since: '0.1.0',
  },
  check({ bus, runsByCable, lengthText }, report) {
    if (runsByCable.size < 2) return;
    const main = mainCable(bus, runsByCable);
    if (!main) return;
    const needs = bus.kind && cableNeeds[bus.kind];
    for (const [cable, runs] of runsByCable) {
      // A cable that does not suit the bus at all, or that leaves a gap in its shield, is told as that.
      if (needs && cableFaults(cable, needs, false).length) continue;
      if (isShielded(main) && isShielded(cable) === false) continue;
      const differences = cable === main ? [] : cableDifferences(cable, main, bus.kind === 'free-topology');
      if (!differences.length) continue;
      const [first, ...others] = runs;
      const length = metres(runs.reduce((sum, run) => sum + run.length, 0));
      report({
        message: `${lengthText(length)} of bus ${bus.name} run on ${cable.name} (${differences.join(', ')}); pull the whole bus on one cable`,
        place: cablePlaceOf(bus, first),
        related: others.map((run) => ({ message: `this run is on ${cable.name} too`, place: run.place })),
        at: cable.name,
        fixes: () => [recable(bus, runs, main)],
      });
    }
  },
};

/** In what two cables differ so that a wave would notice, as parts of a message. */
export function cableDifferences(cable: Cable, main: Cable, classMatters: boolean): string[] {
  const differences: string[] = [];
  if (classMatters && cable.class !== main.class && cable.class !== undefined && main.class !== undefined)
    differences.push(`class ${cable.class}, the rest ${main.class}`);
  if (
    cable.impedance !== undefined &&
    main.impedance !== undefined &&
    differ(cable.impedance, main.impedance, alikeImpedance)
  ) {
    differences.push(`${formatOhms(cable.impedance)}, the rest ${formatOhms(main.impedance)}`);
  }
  const area = conductorArea(cable);
  const mainArea = conductorArea(main);
  if (area !== undefined && mainArea !== undefined && differ(area, mainArea, alikeArea)) {
    differences.push(`${sizeOf(cable)}, the rest ${sizeOf(main)}`);
  }
  return differences;
}

/** Apart by more than a share of the smaller one; equality at the limit counts as alike. */
const differ = (one: number, other: number, share: number) => Math.max(one, other) > Math.min(one, other) * (1 + share);
