/** Devices of a supply that no source feeds. */
import { listed } from '../../known.js';
import type { BusRule } from '../rule.js';
import { namesResolved } from '../shape/names.js';
import { soundSupply, supplyExample, withCare } from './example.js';

export const sourceMissing: BusRule = {
  id: 'source-missing',
  scope: 'bus',
  severity: 'error',
  kinds: ['supply'],
  check(study, report) {
    const { bus, shape } = study;
    if (bus.damaged || !namesResolved(study)) return;
    for (const component of shape.components) {
      const landings = component.map((index) => bus.landings[index]!);
      const [first] = landings;
      if (!first || landings.some(({ port }) => port?.supplies)) continue;
      // A landing whose port could not be told may be the source: that has its own finding.
      if (landings.some(({ node, port }) => node && !port)) continue;
      report({
        message: `nothing feeds ${listed(landings.map(({ name }) => name))} of bus ${bus.name}: no landing that cable joins to them is a source; land them on one, or write in the catalogue what its port supplies`,
        place: first.place,
        at: first.name,
      });
    }
  },
  explanation: {
    what: 'Devices of a supply are joined to no source.',
    why: 'They get no voltage.',
    field: 'The device is dark. Mostly a run is missing from the plan, or it was drawn on another supply.',
    mend: `Join them to a source. A source is a port whose catalogue entry says what it supplies. ${withCare}`,
    bad: supplyExample([...soundSupply, 'from board3 : Board', '10 ft to board4 : Board']),
    good: supplyExample([...soundSupply, '10 ft to board3 : Board']),
    sources: ['It follows from what a supply is: no document is needed'],
    since: '0.1.0',
  },
};
