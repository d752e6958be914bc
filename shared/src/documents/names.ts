/** How documents call the parts of a network. */
import type { Bus, Cable, Landing, Store } from '../network.js';

export const storeTitle = ({ label, name }: Store): string => label ?? name;
export const busTitle = ({ label, name }: Bus): string => label ?? name;

/** `Case controller, revision B`; a splice is called one. */
export function deviceText(landing: Pick<Landing, 'node' | 'splice'>): string {
  return [deviceName(landing), ...revisionOf(landing)].join(', ');
}

/** The device, its revision, its connector, for a column that is called so. */
export function deviceLines(landing: Landing): string[] {
  const { port, splice } = landing;
  const connector = port && (port.label === undefined ? port.name : `${port.label} (${port.name})`);
  return [
    deviceName(landing),
    ...revisionOf(landing),
    ...(splice === undefined ? [connector ?? 'connector not stated'] : []),
  ];
}

function deviceName({ node, splice }: Pick<Landing, 'node' | 'splice'>): string {
  if (splice !== undefined) return 'Splice';
  return node?.device?.label ?? node?.device?.name ?? 'Device not stated';
}

const revisionOf = ({ node, splice }: Pick<Landing, 'node' | 'splice'>): string[] =>
  node?.revision === undefined || splice !== undefined ? [] : [`revision ${node.revision.value}`];

/** `22 AWG shielded pair (ShieldedPair22)`. */
export const cableText = (cable: Cable | undefined): string => {
  if (!cable) return 'cable not stated';
  return cable.label === undefined ? cable.name : `${cable.label} (${cable.name})`;
};

/** Cables by their labels alone, where no other cable of the store has the same one: tables are narrow. */
export function cableNames({ buses }: Store): (cable: Cable | undefined) => string {
  const used = new Set(buses.flatMap(({ runs }) => runs.flatMap(({ cable }) => cable ?? [])));
  const counts = new Map<string, number>();
  for (const { label, name } of used) counts.set(label ?? name, (counts.get(label ?? name) ?? 0) + 1);
  return (cable) => (cable?.label !== undefined && counts.get(cable.label) === 1 ? cable.label : cableText(cable));
}
