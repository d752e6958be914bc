/** A bus that nobody leads. */
import { occasion } from '../../figures/occasions.js';
import type { BusRule } from '../rule.js';
import { exampleOf } from './example.js';
import { namesResolved } from './names.js';

export const noHead: BusRule = {
  id: 'no-head',
  scope: 'bus',
  occasions: occasion.noHead,
  severity: 'warning',
  kinds: ['modbus-rtu', 'bacnet-mstp'],
  check(study, report) {
    const { bus } = study;
    if (study.head || bus.damaged || !namesResolved(study)) return;
    const devices = bus.landings.flatMap(({ node }) => (node ? [node.device] : []));
    if (devices.length < 2) return;
    // An unknown device may be the head, and a repeater passes on what a head behind it says.
    if (devices.some((device) => device?.role !== 'node')) return;
    report({
      message: `none of the ${devices.length} devices of bus ${bus.name} has the role head, so nobody is there to ask the others; land the controller on it, or give its device role head`,
      place: bus.place,
    });
  },
  explanation: {
    what: 'No device of the bus has the role `head`.',
    why: 'On Modbus only the head speaks unasked. On MS/TP devices pass a token, and yet data must leave the bus somewhere.',
    field: 'Everything is wired and nothing answers, for nobody asks.',
    mend: 'Land the controller or gateway on the bus, or write `role head` into its catalogue entry.',
    bad: exampleOf([
      'from head : CaseBoard address 3 terminate switch',
      '38 ft to case1 : CaseBoard address 1 terminate switch',
    ]),
    good: exampleOf(['from head : SiteHead terminate switch', '38 ft to case1 : CaseBoard address 1 terminate switch']),
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 2.2: one master, which has no address',
      'MS/TP: from memory of ANSI/ASHRAE 135 clause 9',
    ],
    since: '0.1.0',
  },
};
