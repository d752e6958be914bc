/** An end-of-line resistor of another value than the input's. */
import { formatResistor } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { loopExample, soundLoop } from './example.js';
import { endResistors, loopOf, misplaced, misvalued, resistorsAt } from './loops.js';

export const endResistorValue: BusRule = {
  id: 'end-resistor-value',
  scope: 'bus',
  severity: 'error',
  kinds: ['contact-loop'],
  check(study, report) {
    const loop = loopOf(study);
    if (!loop || misplaced(loop).length > 0) return;
    const { due } = endResistors(loop);
    for (const landing of misvalued(loop)) {
      const [resistor] = resistorsAt(landing);
      if (!resistor || due === undefined) continue;
      report({
        message: `${landing.name} ends bus ${loop.bus.name} with ${formatResistor(resistor.resistance)}; ${loop.input.name} expects ${formatResistor(due)}: land one of that value instead`,
        place: resistor.place ?? landing.place,
        at: landing.name,
        fixes: () =>
          resistor.place
            ? [
                {
                  title: `Terminate ${landing.name} with ${formatResistor(due)}`,
                  safe: false,
                  edits: [
                    {
                      kind: 'terminate',
                      means: 'resistor',
                      bus: loop.bus.index,
                      landing: landing.index,
                      resistance: due,
                    },
                  ],
                },
              ]
            : [],
      });
    }
  },
  explanation: {
    what: 'The resistor at the end of a loop has another value than its input expects.',
    why: 'The input is set for one value. With another one its readings shift, and a state lands in the wrong reading or beside the border of two.',
    field:
      'Left over from the panel before: every maker has a value of its own. The loop faults on warm or on cold days only.',
    mend: 'Fit the value that the panel asks for, and change the bridges over contacts with it.',
    bad: loopExample([
      '60 ft to call1 : CallButton breaks + bridged 4.7 kohm',
      '25 ft to call2 : CallButton breaks + bridged 4.7 kohm terminate resistor 5.6 kohm',
    ]),
    good: loopExample(soundLoop),
    sources: [
      "The input's own documentation, as the catalogue repeats it",
      'Tolerance of 5 %: the E24 series of IEC 60063, from memory',
    ],
    since: '0.1.0',
  },
};
