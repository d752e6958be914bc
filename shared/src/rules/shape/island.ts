/** A part of a bus that no cable joins to the rest. */
import { occasion } from '../../figures/occasions.js';
import { listed } from '../../known.js';
import type { BusRule } from '../rule.js';
import { exampleOf } from './example.js';
import { namesResolved, trunkKinds } from './names.js';

export const island: BusRule = {
  id: 'island',
  scope: 'bus',
  occasions: occasion.noChain,
  severity: 'error',
  kinds: [...trunkKinds, 'free-topology'],
  check(study, report) {
    const { bus, shape } = study;
    if (shape.ends || bus.damaged || !namesResolved(study)) return;
    for (const component of shape.components.slice(1)) {
      const landing = bus.landings[component[0]!]!;
      const names = component.map((index) => bus.landings[index]!.name);
      const start = bus.landings[0]!.name;
      report({
        message: `no cable joins ${listed(names)} to the rest of bus ${bus.name}, which starts at ${start}; add the run that leads there, or make ${names.length === 1 ? 'it' : 'them'} a bus of ${names.length === 1 ? 'its' : 'their'} own`,
        place: landing.place,
        related: [{ message: `the rest of bus ${bus.name} starts here`, place: bus.landings[0]!.place }],
        at: landing.name,
      });
    }
  },
  explanation: {
    what: 'A part of the bus is joined to the rest by no cable.',
    why: 'What is not connected gets no signal: the head does not reach the devices there.',
    field: 'All devices of the part are silent while each is sound by itself.',
    mend: 'Add the run that leads there; after a `from` the pen starts anew, so that the run before it may be missing. If there really is no cable, it is another bus.',
    bad: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to case1 : CaseBoard address 1 terminate switch',
      'from case2 : CaseBoard address 2',
      '22 ft to case3 : CaseBoard address 3',
    ]),
    good: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to case1 : CaseBoard address 1',
      '30 ft to case2 : CaseBoard address 2',
      '22 ft to case3 : CaseBoard address 3 terminate switch',
    ]),
    sources: ['What is not connected carries no signal: no source is needed'],
    since: '0.1.0',
  },
};
