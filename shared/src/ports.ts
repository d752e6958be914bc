/** Which ports a bus can land on. */
import { type BusKind, type Port, rs485Kinds, type StoreNode } from './network.js';
import type { BitsPerSecond } from './quantity.js';

/** Whether a port is made for a kind of bus: by its electrical kind, and by the protocols that it speaks. */
export function portServes(port: Port, kind: BusKind): boolean {
  if (port.kind === kind) return true;
  if (port.kind !== 'rs485' || !rs485Kinds.has(kind)) return false;
  return port.speaks.length === 0 || port.speaks.includes(kind);
}

/** Whether a port can be set to a rate, as far as the catalogue tells: one that states no rates is not known to refuse any. */
export const takesRate = ({ rates }: Port, rate: BitsPerSecond): boolean => rates.length === 0 || rates.includes(rate);

/** The rates that are in every one of these lists, in the order of the first. */
export function ratesInCommon(lists: readonly (readonly BitsPerSecond[])[]): readonly BitsPerSecond[] {
  const [first = [], ...others] = lists;
  return first.filter((rate) => others.every((rates) => rates.includes(rate)));
}

/** Whether a port is there but not enabled on this node's revision; a node of unsaid revision may be any. */
export function portReserved(port: Port, node: StoreNode): boolean {
  if (!port.reserved) return false;
  const { revisions } = port.reserved;
  return revisions.length === 0 || (node.revision !== undefined && revisions.includes(node.revision.value));
}

/**
 * The port that a bus lands on where the text names none: the only one that was meant for it, else the only one that
 * could take it at all; undefined where there are none or several.
 */
export function soleServingPort(node: StoreNode, kind: BusKind | undefined): Port | undefined {
  if (kind === undefined) return undefined;
  let fit: Port | undefined;
  let poor: Port | undefined;
  let poorCount = 0;
  for (const port of node.device?.ports ?? []) {
    if (!portServes(port, kind)) continue;
    if (isPoor(port, node)) {
      poor = port;
      poorCount++;
    } else if (fit) return undefined;
    else fit = port;
  }
  return fit ?? (poorCount === 1 ? poor : undefined);
}

/** Whether a port that serves a bus is the wrong one all the same, as long as there is another. */
const isPoor = (port: Port, node: StoreNode): boolean => portReserved(port, node) || port.twinOf !== undefined;

/**
 * Whether a landing is on a port that was not meant for its bus: of another kind, a twin, or not enabled. A rule of its
 * own tells of each; what that port then lacks is no cause beside it.
 */
export const isWrongPort = (port: Port, node: StoreNode | undefined, kind: BusKind): boolean =>
  !portServes(port, kind) || (node !== undefined && isPoor(port, node));

/** The ports of a node's device that a bus could land on, the ones that were meant for it first. */
export function servingPorts(
  node: StoreNode,
  bus: { readonly kind?: BusKind | undefined },
): { fit: Port[]; poor: Port[] } {
  const fit: Port[] = [];
  const poor: Port[] = [];
  const { kind } = bus;
  if (kind === undefined) return { fit, poor };
  for (const port of node.device?.ports ?? []) {
    if (!portServes(port, kind)) continue;
    (isPoor(port, node) ? poor : fit).push(port);
  }
  return { fit, poor };
}
