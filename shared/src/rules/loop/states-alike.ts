/** Rest and alarm that no threshold could tell apart. */
import type { Fix } from '../../finding.js';
import { isUnknown, listed } from '../../known.js';
import type { LoopInput } from '../../network.js';
import type { LoopState } from '../../physics/contact-loop.js';
import { formatResistor } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { loopExample, resistorOnly, soundLoop } from './example.js';
import { isSound, type Loop, loopOf } from './loops.js';

export const statesAlike: BusRule = {
  id: 'states-alike',
  scope: 'bus',
  severity: 'error',
  kinds: ['contact-loop'],
  check(study, report) {
    const loop = loopOf(study);
    const states = study.contactLoop;
    // An input that states its readings is judged by them.
    if (!loop || !isSound(loop) || isUnknown(states) || states.facts.windows.length > 0) return;
    const [normal] = states.states;
    if (!normal) return;
    const alike = states.states.filter(
      ({ state, resistance: { low, high } }) =>
        state === 'alarm' && low <= normal.resistance.high && normal.resistance.low <= high,
    );
    const [first] = alike;
    if (!first) return;
    const names = alike.map(({ landing }) => loop.bus.landings[landing!]!.name);
    const at = loop.bus.landings[first.landing!]!;
    const text = ({ low, high }: { low: number; high: number }) =>
      `${formatResistor(low as never)} to ${formatResistor(high as never)}`;
    report({
      message: `the alarm of ${listed(names)} makes ${text(first.resistance)} of bus ${loop.bus.name}, and at rest it has ${text(normal.resistance)}; over their tolerances the two are alike, so that no input can tell them apart: take resistors that differ more`,
      place: at.wiring?.place ?? at.place,
      at: at.name,
      fixes: () => bridgeFixes(loop, alike, states.facts),
    });
  },
  explanation: {
    what: 'Over the tolerances of resistors and cable, the resistance in alarm may be that at rest.',
    why: 'A resistor of 5 % may be 5 % off either way, and the cable adds its own. A bridge that is small beside the resistor at the end hardly changes what the input sees.',
    field:
      'The alarm works on the bench and not in the store, or the other way round after the resistors were changed.',
    mend: 'Take a bridge of about the value of the resistor at the end.',
    bad: loopExample(
      [
        '60 ft to call1 : CallButton breaks + bridged 220 ohm',
        '25 ft to call2 : CallButton breaks + bridged 4.7 kohm terminate resistor 4.7 kohm',
      ],
      { input: resistorOnly },
    ),
    good: loopExample(soundLoop, { input: resistorOnly }),
    sources: [
      'Series and parallel connection of resistances: circuit theory',
      'Tolerance of 5 %: the E24 series of IEC 60063, from memory',
    ],
    since: '0.1.0',
  },
};

/** A bridge as large as the resistor at the end doubles what the input sees. */
function bridgeFixes(loop: Loop, alike: readonly LoopState[], { resistor }: LoopInput): Fix[] {
  const contacts = alike.map(({ landing }) => loop.bus.landings[landing!]!);
  if (!resistor || !contacts.every(({ wiring }) => wiring?.kind === 'breaks')) return [];
  const { resistance } = resistor;
  return [
    {
      title: `Bridge ${listed(contacts.map(({ name }) => name))} with ${formatResistor(resistance)}`,
      safe: false,
      edits: contacts.map(({ index, wiring }) => ({
        kind: 'wire-contact',
        bus: loop.bus.index,
        landing: index,
        wiring: {
          kind: 'breaks',
          conductor: wiring?.kind === 'breaks' ? wiring.conductor : 'plus',
          bridge: resistance,
        },
      })),
    },
  ];
}
