/** How documents call the parts of a network. */
import type { Bus, Cable, Landing, Store } from '../network.js';

export const storeTitle = ({ label, name }: Store): string => label ?? name;
export const busTitle = ({ label, name }: Bus): string => label ?? name;

/** `Case controller, revision B`; a splice is called one. */
export function deviceText({ node, splice }: Pick<Landing, 'node' | 'splice'>): string {
  if (splice !== undefined) return 'Splice';
  const device = node?.device;
  const called = device?.label ?? device?.name ?? 'Device not stated';
  return node?.revision === undefined ? called : `${called}, revision ${node.revision.value}`;
}

/** `connector Field bus 1 (field1)`; undefined for a splice. */
export function portText({ port, splice }: Landing): string | undefined {
  if (splice !== undefined) return undefined;
  if (!port) return 'connector not stated';
  return `connector ${port.label === undefined ? port.name : `${port.label} (${port.name})`}`;
}

/** `22 AWG shielded pair (ShieldedPair22)`. */
export const cableText = (cable: Cable | undefined): string => {
  if (!cable) return 'cable not stated';
  return cable.label === undefined ? cable.name : `${cable.label} (${cable.name})`;
};
