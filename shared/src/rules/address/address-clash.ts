import type { Fix } from '../../finding.js';
import type { Bus, HostNetwork, Landing, Store } from '../../network.js';
import { exampleFile, soundFile, soundRemarks } from '../pair/example.js';
import type { StoreRule } from '../rule.js';
import { addressFixes } from './addresses.js';

export const addressClash: StoreRule = {
  id: 'address-clash',
  scope: 'store',
  severity: 'error',
  kinds: 'every',
  explanation: {
    what: 'Two devices of one bus, or two units of one host network, have the same address.',
    why: 'Both answer the same question at the same time, and their drivers push the pair against each other.',
    field:
      'Neither is seen, or one of them at times, with garbled answers; taking one off the bus makes the other work. ' +
      'The trouble can upset other devices too.',
    mend: 'Give one of them the next free address, on the device and in the plan.',
    bad: exampleFile(`from head : SiteHead terminate switch
38 ft to caseA1 : CaseBoard address 11
22 ft to caseA2 : CaseBoard address 11 terminate resistor 120 ohm
${soundRemarks}`),
    good: soundFile,
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 2.2 and 4.2.1 (addresses are unique on the bus)',
    ],
    since: '0.1.0',
  },
  check(store, studies, report) {
    for (const { bus, census } of studies) {
      if (bus.kind === undefined || census.ascending) continue;
      const first = new Map<number, Landing>();
      for (const landing of bus.landings) {
        const { address, name } = landing;
        if (!address) continue;
        const other = first.get(address.value);
        if (!other) first.set(address.value, landing);
        // Two nodes of one name are a line that was copied, which has a finding of its own.
        else if (other.node !== landing.node && other.node?.name !== landing.node?.name) {
          report({
            bus,
            message: `${name} and ${other.name} both have address ${address.value} on bus ${bus.name}; give one of them another`,
            place: address.place,
            related: [
              { message: `${other.name} has address ${address.value} too`, place: other.address?.place ?? other.place },
            ],
            at: name,
            fixes: () => [...addressFixes(bus, landing), ...otherFixes(bus, other, address.value)],
          });
        }
      }
    }
    for (const network of store.networks) checkNetwork(network, store, report);
  },
};

/** The other one may move instead, when just these two share the address. */
function otherFixes(bus: Bus, other: Landing, address: number): Fix[] {
  const sharing = bus.landings.filter((landing) => landing.address?.value === address);
  return sharing.length === 2 ? addressFixes(bus, other) : [];
}

function checkNetwork(network: HostNetwork, store: Store, report: Parameters<StoreRule['check']>[2]): void {
  const first = new Map<number, HostNetwork['members'][number]>();
  for (const member of network.members) {
    const { address, node } = member;
    if (!address || !node) continue;
    const other = first.get(address.value);
    if (!other) first.set(address.value, member);
    else if (other.node !== node) {
      report({
        message: `${node.name} and ${other.node?.name} both have address ${address.value} on host network ${network.name} of store ${store.name}; give one of them another`,
        place: address.place,
        related: [
          {
            message: `${other.node?.name} has address ${address.value} too`,
            place: other.address?.place ?? other.place,
          },
        ],
        at: node.name,
        fixes: () => {
          const taken = new Set(network.members.map((one) => one.address?.value));
          let free = Math.max(1, Math.floor(address.value) + 1);
          while (taken.has(free)) free++;
          return [
            {
              title: `Give ${node.name} address ${free}, the next free one`,
              safe: false,
              edits: [{ kind: 'write', place: address.place, text: String(free) }],
            },
          ];
        },
      });
    }
  }
}
