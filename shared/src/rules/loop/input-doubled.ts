/** Two inputs on one loop. */
import { listed } from '../../known.js';
import type { BusRule } from '../rule.js';
import { loopExample, soundLoop } from './example.js';

export const inputDoubled: BusRule = {
  id: 'input-doubled',
  scope: 'bus',
  severity: 'error',
  kinds: ['contact-loop'],
  check({ bus, shape }, report) {
    if (bus.damaged) return;
    for (const component of shape.components) {
      const inputs = component.map((index) => bus.landings[index]!).filter(({ port }) => port?.input);
      const [first, second, ...others] = inputs;
      if (!first || !second) continue;
      report({
        message: `bus ${bus.name} is landed on ${inputs.length} inputs, ${listed(inputs.map(({ name }) => name))}; each feeds a current into the loop and misreads that of the other: give each a loop and contacts of its own`,
        place: second.place,
        at: second.name,
        related: [first, ...others].map(({ name, place }) => ({ message: `${name} is an input too`, place })),
      });
    }
  },
  explanation: {
    what: 'One loop is landed on two inputs.',
    why: 'An input feeds a small current into its loop and measures the voltage that it makes. A second input feeds its own, so that both read a resistance that is not there.',
    field: 'Alarms that nobody caused, or none at all, and readings that change when either panel is unplugged.',
    mend: 'Keep one input. Where two panels must know, take a contact with two poles, or let one panel tell the other.',
    bad: loopExample([...soundLoop, '10 ft to second : Panel']),
    good: loopExample(soundLoop),
    sources: ['Common practice, no published source; it follows from how a resistance is measured'],
    since: '0.1.0',
  },
};
