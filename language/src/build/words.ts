/** Words that stand for a value of a short list: kinds of bus, roles, treatments. */
import { type BusKind, busKinds } from '@fieldpair/shared';
import type { RoleName, Word } from '../generated/reader.js';
import type { Notes } from './notes.js';
import { didYouMean, nearest, renameFixes } from './suggest.js';

/** The word when it is one of `allowed`; else undefined with a report that says what is. */
export function wordOf<T extends string>(
  word: Word | RoleName | undefined,
  allowed: readonly T[],
  what: string,
  notes: Notes,
): T | undefined {
  if (word?.text === undefined) return undefined;
  if ((allowed as readonly string[]).includes(word.text)) return word.text as T;
  const likely = nearest(word.text, allowed);
  const place = notes.place(word);
  notes.report(
    'unknown-word',
    `${word.text} is no ${what}; known are ${allowed.join(', ')}${didYouMean(likely)}`,
    place,
    {
      fixes: () => renameFixes(place, likely),
    },
  );
  return undefined;
}

export const kindOf = (word: Word | undefined, notes: Notes): BusKind | undefined =>
  wordOf(word, busKinds, 'kind of bus', notes);
