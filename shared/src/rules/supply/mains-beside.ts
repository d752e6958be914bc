/** A run of a supply or a loop beside mains. */
import type { BusRule } from '../rule.js';
import { runText } from '../shape/names.js';
import { supplyExample, withCare } from './example.js';

export const mainsBeside: BusRule = {
  id: 'mains-beside',
  scope: 'bus',
  severity: 'warning',
  kinds: ['supply', 'contact-loop'],
  check({ bus, lengthText }, report) {
    const runs = bus.runs.filter(({ besideMains }) => besideMains);
    const [first, ...others] = runs;
    if (!first) return;
    report({
      message: `${runText(bus, first.index, lengthText)} of bus ${bus.name} lies beside mains; low voltage shares no cable, tray, box or conduit with power conductors unless a barrier parts them: lay it apart, or waive this with the reason why it may stay`,
      place: first.besideMains ?? first.place,
      at: bus.landings[first.to ?? first.from]!.name,
      related: others.map(({ besideMains, place }) => ({ message: 'so does this run', place: besideMains ?? place })),
    });
  },
  explanation: {
    what: 'A run of a supply or an alarm loop is laid beside mains.',
    why: 'Where insulation fails, mains reaches wires that people touch and boards that stand 24 V. Codes therefore keep class 2 circuits out of the raceways, boxes and cables of power, but for barriers and a few exceptions.',
    field: 'Mostly one tray for everything above the ceiling, or a spare core of a mains cable that was handy.',
    mend: `Lay the run in a way of its own, with a barrier, or at a distance. Where an exception of the local code holds, waive this finding with it as the reason. ${withCare}`,
    bad: supplyExample(['40 ft beside mains to board1 : Board']),
    good: supplyExample(['40 ft to board1 : Board']),
    sources: [
      'NFPA 70 (2008 to 2017) 725.136(A) with its exceptions (B) to (I), as quoted in public; local code decides',
    ],
    since: '0.1.0',
  },
};
