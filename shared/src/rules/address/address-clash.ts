import { lineOf } from '../../figures/line.js';
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
    what: 'Two devices of one bus, or two units of one host network, have the same address. Buses that a repeater joins are one line: it passes every question on.',
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
      if (bus.kind === undefined) continue;
      const line = census.outfits.some(({ device }) => device?.role === 'repeater') ? lineOf(store, bus) : [bus];
      // Buses that repeaters join are looked at together, once.
      if (line.length > 1 ? line[0] === bus : !census.ascending) checkLine(line, store, report);
    }
    for (const network of store.networks) checkNetwork(network, store, report);
  },
};

type Reporting = Parameters<StoreRule['check']>[2];

interface Addressed {
  readonly bus: Bus;
  readonly landing: Landing;
}

function checkLine(line: readonly Bus[], store: Store, report: Reporting): void {
  const first = new Map<number, Addressed>();
  for (const bus of line) {
    for (const landing of bus.landings) {
      const { address, name, node } = landing;
      if (!address) continue;
      const other = first.get(address.value);
      if (!other) first.set(address.value, { bus, landing });
      // Two nodes of one name are a line that was copied, which has a finding of its own.
      else if (other.landing.node !== node && other.landing.node?.name !== node?.name) {
        const there = other.landing;
        const where =
          other.bus === bus
            ? `${name} and ${there.name} both have address ${address.value} on bus ${bus.name}`
            : `${name} on bus ${bus.name} and ${there.name} on bus ${other.bus.name} both have address ${address.value}, and a repeater joins the two buses to one line`;
        report({
          bus,
          message: `${where}; give one of them another`,
          place: address.place,
          related: [
            { message: `${there.name} has address ${address.value} too`, place: there.address?.place ?? there.place },
          ],
          at: name,
          fixes: () => [...addressFixes(store, bus, landing), ...otherFixes(line, store, other, address.value)],
        });
      }
    }
  }
}

/** The other one may move instead, when just these two share the address. */
function otherFixes(line: readonly Bus[], store: Store, { bus, landing }: Addressed, address: number): Fix[] {
  const sharing = line.flatMap((one) => one.landings.filter((other) => other.address?.value === address));
  return sharing.length === 2 ? addressFixes(store, bus, landing) : [];
}

function checkNetwork(network: HostNetwork, store: Store, report: Reporting): void {
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
