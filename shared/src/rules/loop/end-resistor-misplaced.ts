/** A loop's resistor that is not at its end. */
import type { Fix } from '../../finding.js';
import type { Landing } from '../../network.js';
import type { BusRule } from '../rule.js';
import { loopExample, soundLoop } from './example.js';
import { endsOf, type Loop, loopOf, misplaced, resistorsAt } from './loops.js';

export const endResistorMisplaced: BusRule = {
  id: 'end-resistor-misplaced',
  scope: 'bus',
  severity: 'error',
  kinds: ['contact-loop'],
  check(study, report) {
    const loop = loopOf(study);
    if (!loop) return;
    for (const landing of misplaced(loop)) {
      const where = landing === loop.input ? 'at the input itself' : 'before the end of the cable';
      report({
        message: `the resistor at ${landing.name} is ${where}, so that ${loop.input.name} cannot see what lies behind it, a cut wire least of all; land it at the end of bus ${loop.bus.name}`,
        place: resistorsAt(landing)[0]?.place ?? landing.place,
        at: landing.name,
        fixes: () => moveFixes(loop, landing),
      });
    }
  },
  explanation: {
    what: 'The end-of-line resistor of a loop is at its input, or at a landing with more cable behind it.',
    why: 'The input sees the resistor whether the cable behind it is sound, cut or gone. Only what lies between input and resistor is supervised.',
    field:
      'The panel is quiet. A test that opens a wire at the last contact brings no fault, and nobody makes that test.',
    mend: 'Move the resistor to the last contact, behind it as seen from the panel.',
    bad: loopExample([
      '60 ft to call1 : CallButton breaks + bridged 4.7 kohm terminate resistor 4.7 kohm',
      '25 ft to call2 : CallButton breaks + bridged 4.7 kohm',
    ]),
    good: loopExample(soundLoop),
    sources: ['Common practice, no published source; it follows from the circuit'],
    since: '0.1.0',
  },
};

function moveFixes(loop: Loop, landing: Landing): Fix[] {
  const [end, other] = endsOf(loop);
  const [resistor] = resistorsAt(landing);
  if (!end || other || !resistor?.place) return [];
  const at = { bus: loop.bus.index };
  const remove = { kind: 'unterminate' as const, ...at, landing: landing.index };
  if (resistorsAt(end).length > 0) {
    return [{ title: `Remove the resistor at ${landing.name}`, safe: false, edits: [remove] }];
  }
  return [
    {
      title: `Move the resistor from ${landing.name} to ${end.name}`,
      safe: false,
      edits: [
        remove,
        { kind: 'terminate', means: 'resistor', ...at, landing: end.index, resistance: resistor.resistance },
      ],
    },
  ];
}
