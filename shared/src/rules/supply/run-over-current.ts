/** More current in a run than its wire may carry. */
import { isUnknown } from '../../known.js';
import { conductorLimit } from '../../limits/power.js';
import { formatAmperes } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { runText } from '../shape/names.js';
import { soundSupply, supplyExample, withCare } from './example.js';

export const runOverCurrent: BusRule = {
  id: 'run-over-current',
  scope: 'bus',
  severity: 'warning',
  kinds: ['supply'],
  check({ bus, supply, lengthText }, report) {
    if (bus.damaged || isUnknown(supply)) return;
    for (const run of bus.runs) {
      const current = supply.amperes[run.index]!;
      const limit = run.cable && conductorLimit(run.cable);
      if (run.spare || !run.cable || !limit || isUnknown(current) || current.high <= limit.value) continue;
      report({
        message: `${formatAmperes(current.high)} flows in ${runText(bus, run.index, lengthText)}; ${formatAmperes(limit.value as never)} is ${limit.meaning}: pull thicker wire, or divide the loads, as local code has it`,
        place: run.place,
        at: bus.landings[run.to ?? run.from]!.name,
        related: [{ message: `cable ${run.cable.name} is described here`, place: run.cable.place }],
      });
    }
  },
  explanation: {
    what: 'The loads draw more current through a run than its wire may carry.',
    why: 'The wire heats with the square of the current, and its insulation ages and softens. What a wire may carry is a matter of the local code, of its insulation, bundle and surroundings, which this language does not know.',
    field: 'A warm bundle behind a panel, insulation that is brittle at the terminals.',
    mend: `Pull thicker wire or divide the loads over more runs. ${withCare}`,
    bad: supplyExample(['40 ft to board1 : Board'], {
      conductor: '18 AWG stranded\n  carries 3 A',
      board: '3.5 A dc above 19 V below 30 V',
    }),
    good: supplyExample(soundSupply),
    sources: [
      'The maker of the cable, where its catalogue entry says what a conductor carries',
      'From memory of NFPA 70 (2017) 240.4(D): 7 A before 18 AWG, 10 A before 16 AWG, and so on; local code decides',
    ],
    since: '0.1.0',
  },
};
