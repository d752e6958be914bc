/** A supervised input on a loop without its resistor. */
import type { Fix } from '../../finding.js';
import { formatResistor, type Ohms } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { loopExample, soundLoop } from './example.js';
import { endResistors, endsOf, type Loop, loopOf } from './loops.js';

export const endResistorMissing: BusRule = {
  id: 'end-resistor-missing',
  scope: 'bus',
  severity: 'error',
  kinds: ['contact-loop'],
  check(study, report) {
    const loop = loopOf(study);
    if (!loop) return;
    const { due, at } = endResistors(loop);
    const ends = endsOf(loop);
    const [end] = ends;
    if (due === undefined || at.length > 0 || !end) return;
    report({
      message: `bus ${loop.bus.name} has no resistor at its end, and ${loop.input.name} expects ${formatResistor(due)} there; land one across the pair at ${ends.length === 1 ? end.name : 'the landing that is farthest'}`,
      place: end.place,
      at: end.name,
      related: [
        {
          message: 'the input expects it here',
          place: loop.input.port?.input?.resistor?.place ?? loop.input.place,
        },
      ],
      fixes: () => landFixes(loop, due),
    });
  },
  explanation: {
    what: 'The input expects a resistor at the end of its loop, and the loop has none.',
    why: 'The resistor is what the input measures while nothing is wrong. It tells a sound loop from a cut wire, which reads open, and from wires that touch, which read nothing. It can do so only from the far end.',
    field:
      'The input shows an alarm or a fault from the start. Somebody then fits the resistor inside the panel, which quiets it and supervises nothing.',
    mend: "Land the resistor across the pair at the last contact, behind it as seen from the panel, de-energised and by the maker's instructions.",
    bad: loopExample([
      '60 ft to call1 : CallButton breaks + bridged 4.7 kohm',
      '25 ft to call2 : CallButton breaks + bridged 4.7 kohm',
    ]),
    good: loopExample(soundLoop),
    sources: ["The input's own documentation, as the catalogue repeats it"],
    since: '0.1.0',
  },
};

/** Only a loop with one end has one place for the resistor. */
function landFixes(loop: Loop, resistance: Ohms): Fix[] {
  const [end, other] = endsOf(loop);
  if (!end || other) return [];
  return [
    {
      title: `Terminate ${end.name} with ${formatResistor(resistance)}`,
      safe: false,
      edits: [{ kind: 'terminate', means: 'resistor', bus: loop.bus.index, landing: end.index, resistance }],
    },
  ];
}
