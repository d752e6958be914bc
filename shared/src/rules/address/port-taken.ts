import type { Bus, Landing, Store, StoreNode } from '../../network.js';
import { exampleBoard, exampleCable, headOf, headPort } from '../pair/example.js';
import type { StoreRule } from '../rule.js';
import { portFixes, portPlaceOf } from './landable-ports.js';

const head = headOf(headPort('field1'), headPort('field2'));
const bus = (name: string, port: string, node: string) => `  bus ${name} : modbus-rtu 9600 8E1 on ShieldedPair22 {
    from head.${port} terminate switch
    38 ft to ${node} : CaseBoard address 11 terminate resistor 120 ohm
    shield earthed at head
    colours + white - blue shield drain
  }
`;
const twoBuses = (second: string) =>
  `${exampleCable}${head}${exampleBoard}store northgate {
  node head : SiteHead
${bus('chillers', 'field1', 'caseA1')}${bus('freezers', second, 'caseB1')}}
`;

export const portTaken: StoreRule = {
  id: 'port-taken',
  scope: 'store',
  severity: 'error',
  kinds: 'every',
  explanation: {
    what: 'Two buses are landed on the same port of the same node.',
    why:
      'Two buses on one pair of terminals are one bus with a branch: twice the load, four ends, both sets of ' +
      'addresses. Or the plan names one of the two ports wrongly, and the installer has to guess.',
    field: 'Two cables arrive for one connector; or one of the buses never comes up, for it hangs on the wrong port.',
    mend: 'Land one of them on another port, or write the two as the one bus that they are.',
    bad: twoBuses('field1'),
    good: twoBuses('field2'),
    sources: ['Common practice, no published source'],
    since: '0.1.0',
  },
  check(store, _, report) {
    // Only these can meet another bus at a port.
    const shared = nodesLandedAgain(store);
    if (!shared.size) return;
    const first = new Map<string, { readonly bus: Bus; readonly landing: Landing }>();
    for (const bus of store.buses) {
      // A supply may feed several runs from one pair of terminals.
      if (bus.kind === undefined || bus.kind === 'supply') continue;
      for (const landing of bus.landings) {
        const { node, port, name } = landing;
        if (!node || !port || !shared.has(node)) continue;
        const key = JSON.stringify([node.name, port.name]);
        const other = first.get(key);
        if (!other) first.set(key, { bus, landing });
        else if (other.bus !== bus) {
          report({
            bus,
            message: `port ${port.name} of ${node.name} carries bus ${other.bus.name} already; land bus ${bus.name} on another port`,
            place: portPlaceOf(landing),
            related: [{ message: `bus ${other.bus.name} is landed here`, place: portPlaceOf(other.landing) }],
            at: name,
            fixes: () => portFixes(store, bus, landing),
          });
        }
      }
    }
  },
};

/** Nodes with several landings, and those that are landed in another order than they are declared in. */
function nodesLandedAgain({ nodes, buses }: Store): Set<StoreNode> {
  const again = new Set<StoreNode>();
  let next = 0;
  for (const { landings } of buses) {
    for (const { node } of landings) {
      if (!node) continue;
      if (node === nodes[next]) next++;
      else again.add(node);
    }
  }
  return again;
}
