/** How an address shows on the dials or switches of a device: what follows its range in the catalogue. */
import type { AddressSetting } from '@fieldpair/shared';
import type { PortAddress } from '../generated/reader.js';
import type { Notes } from './notes.js';
import { wordOf } from './words.js';

type Coding = Omit<AddressSetting, 'means' | 'low' | 'high'>;

/** What each word says, and of what it can be said. */
const words = {
  'least-first': { coding: { first: 'least' }, of: ['dial', 'switches'] },
  'most-first': { coding: { first: 'most' }, of: ['dial', 'switches'] },
  'up-is-on': { coding: { on: 'up' }, of: ['switches'] },
  'down-is-on': { coding: { on: 'down' }, of: ['switches'] },
  'on-is-zero': { coding: { onIsZero: true }, of: ['switches'] },
  hexadecimal: { coding: { hexadecimal: true }, of: ['dial'] },
} as const satisfies Record<string, { coding: Coding; of: readonly AddressSetting['means'][] }>;

/** More dials or switches than any device has for one address. */
const mostPositions = 16;

export function addressCoding(
  property: PortAddress,
  means: AddressSetting['means'],
  high: number,
  notes: Notes,
): Coding {
  let coding: Coding = {};
  for (const word of property.coding) {
    const fitting = Object.entries(words).filter(([, { of }]) => (of as readonly string[]).includes(means));
    const known = wordOf(
      word,
      fitting.map(([name]) => name as keyof typeof words),
      `way to read an address that is set by ${means}`,
      notes,
    );
    if (known) coding = { ...coding, ...words[known].coding };
  }
  const positions = property.positions?.value;
  if (positions === undefined) return coding;
  const base = means === 'switches' ? 2 : coding.hexadecimal ? 16 : 10;
  if (
    !property.positions?.negative &&
    Number.isInteger(positions) &&
    0 < positions &&
    positions <= mostPositions &&
    high < base ** positions
  ) {
    return { ...coding, positions };
  }
  notes.report(
    'value-impossible',
    `${notes.textAt(property.positions ?? property)} ${means === 'dial' ? 'dials' : 'switches'} cannot show ${high}; ` +
      `write how many the device has, at most ${mostPositions}`,
    notes.place(property.positions ?? property),
  );
  return coding;
}
