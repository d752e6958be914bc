import { type CableNeeds, cableNeeds } from '../../limits/cable.js';
import type { Cable } from '../../network.js';
import type { BusRule } from '../rule.js';
import { cableFaults } from './cable-faults.js';
import { cablePlaceOf, isPartlyShielded, isShielded } from './cables.js';
import { exampleBoard, exampleCable, exampleHead, exampleStore, soundFile } from './example.js';
import { pullFixes } from './pull-on.js';

/** What a cable was last found to suit: stores without number have the same few. */
const suitedFor = new WeakMap<Cable, { readonly needs: CableNeeds; readonly rate: number | undefined }>();

export const cableUnsuited: BusRule = {
  id: 'cable-unsuited',
  scope: 'bus',
  severity: 'warning',
  kinds: ['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485', 'free-topology', 'can', 'ethernet'],
  explanation: {
    what:
      'A cable of the bus is not what its kind asks for: no shield where one is due, not twisted, of another ' +
      'impedance, of too high capacitance, or too thin.',
    why:
      'Twist makes both wires pick up the same noise, so that the receiver can subtract it; the shield keeps off what ' +
      'the twist does not. A wrong impedance cannot be matched by the usual terminators, capacitance slows edges, and ' +
      'thin conductors lose level over length.',
    field:
      'Errors come and go with compressors, drives and lamps. The far end of a long bus answers badly at rates that ' +
      'the near end handles.',
    mend: 'Pull a shielded twisted pair made for the kind of bus, for RS-485 one of 120 ohm, AWG 26 or thicker.',
    bad: `cable Alarm22 {
  conductor 22 AWG solid
  untwisted
  shield none
  colours white, blue
}
${exampleCable}${exampleHead}${exampleBoard}${exampleStore(
  `from head : SiteHead terminate switch
38 ft to caseA1 : CaseBoard address 11
22 ft to caseA2 : CaseBoard address 12 terminate resistor 120 ohm
colours + white - blue`,
  'modbus-rtu 9600 8E1 on Alarm22',
)}`,
    good: soundFile,
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 3.4.2 and 3.6 (shield, pair, AWG 26)',
      'ANSI/ASHRAE 135-2004 clause 9, in a public quotation (MS/TP: shield, 100 to 130 ohm, below 100 pF/m)',
      'ISO 11898-2:2003, as reprinted (95 to 140 ohm)',
      'Published RS-485 tutorial of a transceiver maker (120 ohm, give or take 30)',
      'Free topology transceiver data book, cable table (thinnest conductor 24 AWG)',
      'Category 5 wording: 100 ohm +-15 %; the category by rate from memory of IEEE 802.3',
    ],
    since: '0.1.0',
  },
  check(study, report) {
    const { bus, runsByCable } = study;
    const needs = bus.kind && cableNeeds[bus.kind];
    if (!needs) return;
    const rate = bus.rate?.value;
    for (const [cable, runs] of runsByCable) {
      const suited = suitedFor.get(cable);
      if (suited?.needs === needs && suited.rate === rate) continue;
      const faults = cableFaults(cable, needs, true, rate);
      if (faults.length === 0) {
        suitedFor.set(cable, { needs, rate });
        continue;
      }
      // A bare stretch of a shielded bus is a gap in its shield and has its finding there, unless more is wrong with it.
      if (isPartlyShielded(study) && cableFaults(cable, needs, false, rate).length === 0) continue;
      const [first, ...others] = runs;
      report({
        message: `cable ${cable.name} does not suit bus ${bus.name} (${bus.kind}): ${faults.join('; ')}; pull one that has what is due`,
        place: cablePlaceOf(bus, first),
        related: [
          { message: `cable ${cable.name} is described here`, place: cable.place },
          ...others
            .filter(({ cablePlace }) => cablePlace)
            .map(({ place }) => ({ message: `this run is on ${cable.name} too`, place })),
        ],
        at: cable.name,
        fixes: () => pullFixes(study, cable, runs, (other) => isSuited(needs, other, rate)),
      });
    }
  },
};

/** Another cable that this kind of bus could run on, a shielded one where a shield is due. */
const isSuited = (needs: CableNeeds, cable: Cable, rate: number | undefined): boolean =>
  cable.impedance !== undefined &&
  cable.pairs !== undefined &&
  0 < cable.pairs &&
  (needs.shield === undefined || isShielded(cable) === true) &&
  cableFaults(cable, needs, true, rate).length === 0;
