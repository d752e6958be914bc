/** A cut or a short that the input cannot see. */
import { isUnknown, listed, type Range } from '../../known.js';
import { type ContactLoop, readingOf } from '../../physics/contact-loop.js';
import type { Ohms } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { runText } from '../shape/names.js';
import { loopExample, soundLoop } from './example.js';
import { isSound, loopOf } from './loops.js';

export const loopUnsupervised: BusRule = {
  id: 'loop-unsupervised',
  scope: 'bus',
  severity: 'warning',
  kinds: ['contact-loop'],
  check(study, report) {
    const loop = loopOf(study);
    const states = study.contactLoop;
    if (!loop || !isSound(loop) || isUnknown(states)) return;
    const { bus, input } = loop;
    const supervised = input.port?.input?.resistor !== undefined;
    for (const [fault, name] of [
      ['cut', 'cut'],
      ['short', 'shorted'],
    ] as const) {
      const unseen = states.wires.filter((wire) => seemsNormal(states, wire[fault]));
      const [first, ...others] = unseen;
      if (!first) continue;
      const runs = unseen.map(({ run }) => runText(bus, run, study.lengthText));
      report({
        // An input without a resistor at the end was chosen so; one with it is meant to see both.
        severity: supervised ? 'warning' : 'info',
        message: `while ${listed(runs)} ${runs.length === 1 ? 'is' : 'are'} ${name}, ${input.name} may see what it sees with nothing wrong, so that nobody learns of it; ${supervised ? 'let each branch end in a resistor that the input expects' : 'take an input with a resistor at the end of its loop where that matters'}`,
        place: bus.runs[first.run]!.place,
        at: bus.landings[first.landing]!.name,
        related: others.map(({ run }) => ({ message: 'this run is not watched either', place: bus.runs[run]!.place })),
      });
    }
  },
  explanation: {
    what: 'A wire of the loop may be cut, or two may touch, without the input seeing it.',
    why: 'A loop of closed contacts without a resistor reads nothing at rest, and a short reads nothing too. A branch without a resistor can be cut off unnoticed. Contacts behind such a fault never alarm.',
    field: 'Found in a test or after an accident: the button was pressed and nothing happened.',
    mend: 'Run the loop from contact to contact in one chain with the resistor at its end, on an input that is made for it. Test by opening and shorting the wire at the last contact.',
    bad: loopExample([
      '60 ft to splice junction',
      '25 ft to call1 : CallButton breaks + bridged 4.7 kohm terminate resistor 4.7 kohm',
      'from junction',
      '30 ft to float1 : Float across through 4.7 kohm',
    ]),
    good: loopExample(soundLoop),
    sources: [
      'Common practice, no published source; codes for fire and life safety ask for supervised circuits, and come first',
    ],
    since: '0.1.0',
  },
};

/** Read as normal; or, where the input states no readings, possibly what it sees at rest. */
function seemsNormal({ facts, states }: ContactLoop, range: Range<Ohms>): boolean {
  const reading = readingOf(range, facts);
  if (reading !== undefined) return reading === 'normal';
  const rest = states[0]?.resistance;
  return rest !== undefined && range.low <= rest.high && rest.low <= range.high;
}
