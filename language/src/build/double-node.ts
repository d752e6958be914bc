/** A line that was copied, and with it the declaration of a node: the second one is another device under the same name. */
import type { Fix } from '@fieldpair/shared';
import type { BusDeclaration, Landing, Name } from '../generated/reader.js';
import type { Notes } from './notes.js';
import { nameText } from './suggest.js';

/** The nodes of such lines, by the name in the tree that declares each. */
export type DoubleNodes<Node> = ReadonlyMap<Name, Node>;

/**
 * Gives the copy the next name that nobody has, and where it has the address of its original the next free one.
 * @param isTaken whether a node or splice has a name
 */
export function doubleFixes(
  bus: BusDeclaration,
  copy: Landing,
  isTaken: (name: string) => boolean,
  notes: Notes,
): Fix[] {
  const written = copy.node?.text;
  if (!copy.node || written === undefined) return [];
  const name = nextName(written, isTaken);
  const address = nextAddress(bus, copy);
  return [
    {
      title: `Call this one ${name}${address ? `, with address ${address.value}` : ''}`,
      safe: false,
      edits: [
        { kind: 'write', place: notes.place(copy.node), text: nameText(name) },
        ...(address ? [{ kind: 'write', place: notes.place(address.at), text: String(address.value) } as const] : []),
      ],
    },
  ];
}

/** `caseA3` after `caseA2`, `probe2` after `probe`. */
function nextName(name: string, isTaken: (name: string) => boolean): string {
  const [, stem = name, digits = '1'] = /^(.*?)(\d{0,9})$/s.exec(name) ?? [];
  let number = Number(digits === '' ? 1 : digits) + 1;
  while (isTaken(stem + String(number).padStart(digits.length, '0'))) number++;
  return stem + String(number).padStart(digits.length, '0');
}

/** The first address above the copy's that nothing on the bus has; undefined where the copy's own is free. */
function nextAddress(bus: BusDeclaration, copy: Landing) {
  const taken = new Set<number>();
  let own: { readonly value: number; readonly start: number; readonly end: number } | undefined;
  for (const statement of bus.statements) {
    if (statement.type !== 'From' && statement.type !== 'Run') continue;
    for (const property of statement.landing?.properties ?? []) {
      const value = property.type === 'LandingAddress' ? property.address?.value : undefined;
      if (value === undefined || property.type !== 'LandingAddress' || !property.address) continue;
      if (statement.landing === copy) own = { value, start: property.address.start, end: property.address.end };
      else taken.add(value);
    }
  }
  if (!own || !taken.has(own.value)) return undefined;
  let value = own.value + 1;
  while (taken.has(value)) value++;
  return { value, at: own };
}
