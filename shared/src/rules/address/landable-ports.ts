/** Where a landing could go instead. */
import type { Fix, NetworkEdit } from '../../finding.js';
import { dueTermination } from '../../limits/due-terminator.js';
import { type Bus, type Landing, type Port, rs485Kinds, type Store } from '../../network.js';
import { servingPorts, takesRate } from '../../ports.js';
import { partsText } from '../ends/terminators.js';
import { freeAddress } from './addresses.js';

/** Ports of the landing's node that are meant for the bus and that no bus of the store is landed on. */
export function landablePorts(store: Store, bus: Bus, { node }: Landing): Port[] {
  if (!node) return [];
  const taken = new Set<string>();
  for (const other of store.buses) {
    for (const landing of other.landings) if (landing.node === node && landing.port) taken.add(landing.port.name);
  }
  return servingPorts(node, bus).fit.filter(({ name }) => !taken.has(name));
}

/**
 * One fix for each port that the landing could go to. Where the other port cannot be set to the address, or has no
 * terminator to switch on, that changes along with it. `safe` tells that nothing but this is left to decide.
 */
export function portFixes(
  store: Store,
  bus: Bus,
  landing: Landing,
  ports = landablePorts(store, bus, landing),
  safe = false,
): Fix[] {
  const { rate } = bus;
  const able = ports.filter((port) => !rate || takesRate(port, rate.value));
  return able.map((port) => {
    const changes = [...addressEdits(store, bus, landing, port), ...terminatorEdits(bus, landing, port)];
    return {
      title: `Land on ${landing.node?.name}.${port.name}${changes.map(({ text }) => `, ${text}`).join('')}`,
      safe: safe && changes.length === 0,
      edits: [
        { kind: 'set-port', bus: bus.index, landing: landing.index, port: port.name },
        ...changes.map(({ edit }) => edit),
      ],
    };
  });
}

interface Change {
  readonly text: string;
  readonly edit: NetworkEdit;
}

function addressEdits(store: Store, bus: Bus, landing: Landing, port: Port): Change[] {
  const { address } = landing;
  const setting = port.address;
  if (!address || !setting || (setting.low <= address.value && address.value <= setting.high)) return [];
  const free = freeAddress(store, bus, { ...landing, port });
  if (free === undefined) return [];
  const edit = { kind: 'set-address', bus: bus.index, landing: landing.index, address: free } as const;
  return [{ text: `with address ${free}, which it can be set to`, edit }];
}

function terminatorEdits(bus: Bus, landing: Landing, port: Port): Change[] {
  if (!landing.switchRequested || port.terminator?.mode === 'switch') return [];
  const due = dueTermination(bus, landing);
  return [
    {
      text: `terminated with ${partsText(due)}`,
      edit: { kind: 'terminate', means: 'resistor', bus: bus.index, landing: landing.index, ...due },
    },
  ];
}

/** What a port is for: `can`, or the protocols that an RS-485 port speaks. */
export const purposeOf = ({ kind, speaks }: Port): string =>
  kind === 'rs485' && speaks.some((one) => rs485Kinds.has(one))
    ? `rs485 for ${speaks.join(', ')}`
    : (kind ?? 'unknown');

/** Where a landing's port is to be mended: the written port, else the whole reference. */
export const portPlaceOf = (landing: Landing) => landing.portPlace ?? landing.place;
