/** More resistance of cable than an input allows. */
import { isUnknown } from '../../known.js';
import { formatOhms } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { loopExample, soundLoop } from './example.js';
import { loopOf } from './loops.js';

export const loopResistanceOverLimit: BusRule = {
  id: 'loop-resistance-over-limit',
  scope: 'bus',
  severity: 'error',
  kinds: ['contact-loop'],
  check(study, report) {
    const loop = loopOf(study);
    const most = loop?.input.port?.input?.mostCable;
    if (!loop || !most || isUnknown(study.contactLoop)) return;
    const { cable } = study.contactLoop;
    if (cable.nominal <= most.resistance) return;
    report({
      message: `the cable of bus ${loop.bus.name} has ${formatOhms(cable.nominal)} out and back; ${loop.input.name} allows ${formatOhms(most.resistance)}: pull a thicker cable or a shorter way`,
      place: loop.bus.place,
      at: loop.input.name,
      related: [{ message: 'the input says so here', place: most.place }],
    });
  },
  explanation: {
    what: 'The cable of a loop resists more, out and back, than its input allows.',
    why: 'The resistance of the cable adds to that of every state. Beyond what the maker allows for, a short at the far end no longer reads as one.',
    field: 'It shows on long ways in thin cable, and first when the wires touch far from the panel.',
    mend: 'Pull a thicker cable, or put a module nearer to the contacts.',
    bad: loopExample([
      '4 km to call1 : CallButton breaks + bridged 4.7 kohm',
      '25 ft to call2 : CallButton breaks + bridged 4.7 kohm terminate resistor 4.7 kohm',
    ]),
    good: loopExample(soundLoop),
    sources: [
      "The input's own documentation, as the catalogue repeats it",
      'Resistance of copper: NBS Handbook 100 (the gauges), IEC 60028 (resistivity)',
    ],
    since: '0.1.0',
  },
};
