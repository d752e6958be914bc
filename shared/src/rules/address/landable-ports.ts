/** Where a landing could go instead. */
import type { Fix } from '../../finding.js';
import { type Bus, type Landing, type Port, rs485Kinds, type Store } from '../../network.js';
import { servingPorts } from '../../ports.js';

/** Ports of the landing's node that are meant for the bus and that no bus of the store is landed on. */
export function landablePorts(store: Store, bus: Bus, { node }: Landing): Port[] {
  if (!node) return [];
  const taken = new Set<string>();
  for (const other of store.buses) {
    for (const landing of other.landings) if (landing.node === node && landing.port) taken.add(landing.port.name);
  }
  return servingPorts(node, bus).fit.filter(({ name }) => !taken.has(name));
}

/** One fix for each port that the landing could go to. */
export function portFixes(store: Store, bus: Bus, landing: Landing, ports = landablePorts(store, bus, landing)): Fix[] {
  return ports.map(({ name }) => ({
    title: `Land on ${landing.node?.name}.${name}`,
    safe: false,
    edits: [{ kind: 'set-port', bus: bus.index, landing: landing.index, port: name }],
  }));
}

/** What a port is for: `can`, or the protocols that an RS-485 port speaks. */
export const purposeOf = ({ kind, speaks }: Port): string =>
  kind === 'rs485' && speaks.some((one) => rs485Kinds.has(one))
    ? `rs485 for ${speaks.join(', ')}`
    : (kind ?? 'unknown');

/** Where a landing's port is to be mended: the written port, else the whole reference. */
export const portPlaceOf = (landing: Landing) => landing.portPlace ?? landing.place;
