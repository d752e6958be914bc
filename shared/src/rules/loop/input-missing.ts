/** Landings of a loop that no input reads. */
import { listed } from '../../known.js';
import type { BusRule } from '../rule.js';
import { namesResolved } from '../shape/names.js';
import { loopExample, soundLoop } from './example.js';

export const inputMissing: BusRule = {
  id: 'input-missing',
  scope: 'bus',
  severity: 'error',
  kinds: ['contact-loop'],
  check(study, report) {
    const { bus, shape } = study;
    if (bus.damaged || !namesResolved(study)) return;
    for (const component of shape.components) {
      const landings = component.map((index) => bus.landings[index]!);
      const [first] = landings;
      if (!first || landings.some(({ port }) => port?.input)) continue;
      // A landing whose port could not be told may be the input: that has its own finding.
      if (landings.some(({ node, port }) => node && !port)) continue;
      report({
        message: `nothing reads ${listed(landings.map(({ name }) => name))} of bus ${bus.name}: no landing that cable joins to them is an input; land the loop on one, or say in the catalogue what the input's port expects and reads`,
        place: first.place,
        at: first.name,
      });
    }
  },
  explanation: {
    what: 'Contacts of a loop are joined to no input.',
    why: 'A contact tells its state by the resistance of the loop, and only an input measures that.',
    field: 'The contact works, its relay clicks, and no alarm comes.',
    mend: 'Land the loop on the input, and join what lies apart from it. An input is a port whose catalogue entry says what it expects or reads.',
    bad: loopExample([
      '60 ft to call1 : CallButton breaks + bridged 4.7 kohm terminate resistor 4.7 kohm',
      'from call2 : CallButton across',
    ]),
    good: loopExample(soundLoop),
    sources: ['It follows from what a loop is: no document is needed'],
    since: '0.1.0',
  },
};
