/** More contacts than an input serves. */
import type { BusRule } from '../rule.js';
import { loopExample, soundLoop } from './example.js';
import { loopOf } from './loops.js';

export const contactsOverLimit: BusRule = {
  id: 'contacts-over-limit',
  scope: 'bus',
  severity: 'error',
  kinds: ['contact-loop'],
  check(study, report) {
    const loop = loopOf(study);
    const most = loop?.input.port?.input?.mostContacts;
    if (!loop || !most || loop.contacts.length <= most.count) return;
    const { bus, contacts, input } = loop;
    report({
      message: `bus ${bus.name} has ${contacts.length} contacts; ${input.name} serves ${most.count} at most (${contacts.length - most.count} over): put the others on a loop of their own`,
      place: bus.place,
      at: input.name,
      related: [{ message: 'the input says so here', place: most.place }],
    });
  },
  explanation: {
    what: 'A loop has more contacts than its input serves.',
    why: 'Every contact in alarm adds its bridge to the loop, or lays its resistor across it. The input tells so many apart from a fault and no more; each also leaks a little and adds joints that can fail.',
    field: 'One alarm is shown as an alarm, and several at once as a fault of the wiring.',
    mend: 'Spread the contacts over more inputs.',
    bad: loopExample([
      '60 ft to call1 : CallButton breaks + bridged 4.7 kohm',
      '5 ft to call2 : CallButton breaks + bridged 4.7 kohm',
      '5 ft to call3 : CallButton breaks + bridged 4.7 kohm',
      '5 ft to call4 : CallButton breaks + bridged 4.7 kohm terminate resistor 4.7 kohm',
    ]),
    good: loopExample(soundLoop),
    sources: ["The input's own documentation, as the catalogue repeats it"],
    since: '0.1.0',
  },
};
