import { occasion } from '../../figures/occasions.js';
import { metres } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { soundFile } from './example.js';

export const cableUnstated: BusRule = {
  id: 'cable-unstated',
  scope: 'bus',
  occasions: occasion.noCable,
  severity: 'info',
  kinds: ['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485', 'can', 'free-topology', 'contact-loop', 'supply'],
  explanation: {
    what: 'A bus, or some of its runs, do not say which cable they are.',
    why: 'Resistance, meter readings, levels, delay, waveforms and voltage drop follow from the cable. Without it they are not computed, and what rules need them says nothing.',
    field:
      'Nothing yet; a cable that does not serve is not seen on the plan, and the meter has nothing to be held against.',
    mend: "Write the cable after the kind of bus, `on` and its name in the catalogue, or behind the length of the run that it is. What the jacket says goes into the cable's entry.",
    bad: soundFile.replace(' on ShieldedPair22', ''),
    good: soundFile,
    sources: ['The figures need it: see their formulas in DEVELOPERS.md and at each figure'],
    since: '0.1.0',
  },
  check({ bus, lengthText }, report) {
    if (bus.damaged || bus.cablePlace || bus.kind === undefined) return;
    const bare = bus.runs.filter(({ spare, cable, cablePlace }) => !spare && !cable && !cablePlace);
    const [first] = bare;
    if (!first) return;
    const pulled = metres(bare.reduce((sum, run) => sum + run.length, 0));
    const what = bare.length === 1 ? 'a run' : `${bare.length} runs`;
    report({
      message: `${what} of bus ${bus.name} (${lengthText(pulled)}) ${bare.length === 1 ? 'does not say which cable it is' : 'do not say which cable they are'}, so that resistance, readings and levels are not computed and the rules that need them say nothing; write it after the kind of the bus, on and its name`,
      place: bus.runs.every(({ spare, cable }) => spare || !cable) ? (bus.kindPlace ?? bus.place) : first.place,
    });
  },
};
