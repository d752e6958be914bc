import { leastCanLoad } from '../../limits/can.js';
import { endResistance } from '../../physics/can.js';
import { portConductance } from '../../physics/loads.js';
import { formatOhms, ohms } from '../../quantity.js';
import { canExample } from '../other-example.js';
import type { BusRule } from '../rule.js';

const crowd = [
  'from head : RackHead terminate switch',
  ...Array.from(
    { length: 55 },
    (_, at) => `3 ft to valve${at + 1} : ValveBoard address ${at + 1}${at === 54 ? ' terminate resistor 120 ohm' : ''}`,
  ),
];

/** Two terminators and all nodes in one point: the cable between them only helps. A terminator too many has its own finding. */
export const nodesOverBudget: BusRule = {
  id: 'nodes-over-budget',
  severity: 'warning',
  kinds: ['can'],
  scope: 'bus',
  check: ({ bus, shape }, report) => {
    if (bus.damaged || !shape.ends) return;
    let conductance = 0;
    for (const end of shape.ends) conductance += 1 / endResistance(bus.landings[end]!);
    const devices = bus.landings.filter(({ node }) => node);
    for (const landing of devices) conductance += portConductance('can', landing)?.across ?? 0;
    const load = ohms(1 / conductance);
    if (leastCanLoad.value <= load) return;
    const unsaid = devices.filter(({ port }) => port?.resistance === undefined).length;
    const assumed = unsaid > 0 ? ` (${unsaid} of them state no resistance and count as 20 kohm)` : '';
    report({
      message: `the ${devices.length} nodes${assumed} and two terminators of bus ${bus.name} are ${formatOhms(load)} together; ${leastCanLoad.value} ohm is ${leastCanLoad.meaning}; divide the bus, or state what the nodes resist`,
      place: bus.place,
    });
  },
  explanation: {
    what: 'The nodes and terminators of a CAN bus resist less together than a driver must stand.',
    why: 'Each node draws a little current through its own resistance between the wires. Below 45 ohm a driver need not reach its dominant level of 1.5 V, and the receivers get less than they need.',
    field:
      'An unpowered bus reads well under 60 ohm across the pair; error counters climb with each node that is added, first at the far end.',
    mend: 'Divide the bus with a gateway or repeater, use terminators of a larger value where the length allows, and write into the catalogue what each port resists (`resistance 30 kohm`).',
    bad: canExample(crowd, { resistance: '8 kohm' }),
    good: canExample(crowd, { resistance: '30 kohm' }),
    sources: [
      'Philips AN96116, section 4: RT/2 in parallel with Rdiff/(n - 1) is at least 45 ohm; a node that states no resistance counts as 20 kohm, the least behind its table',
    ],
    since: '0.1.0',
  },
};
