/** Words that stand for a value of a short list: kinds of bus, roles, treatments. */
import { type BusKind, busKinds } from '@fieldpair/shared';
import type { RoleName, Word } from '../generated/reader.js';
import { keywords } from '../read/scanner.js';
import type { Notes } from './notes.js';
import { didYouMean, meantBy, nearest, writeFixes } from './suggest.js';

/**
 * The word when it is one of `allowed`; else, with a report, the one that it was meant for where only one can be, so
 * that the rest is judged by it.
 */
export function wordOf<T extends string>(
  word: Word | RoleName | undefined,
  allowed: readonly T[],
  what: string,
  notes: Notes,
): T | undefined {
  if (word?.text === undefined) return undefined;
  if ((allowed as readonly string[]).includes(word.text)) return word.text as T;
  const likely = nearest(word.text, allowed);
  // A list of words goes on until a keyword, so that a misspelt one is taken for a word of it.
  const meant = likely.length ? likely : nearest(word.text, keywords);
  const place = notes.place(word);
  notes.report(
    'unknown-word',
    `${word.text} is no ${what}; known are ${allowed.join(', ')}${didYouMean(meant)}`,
    place,
    {
      fixes: () => writeFixes(place, meant),
    },
  );
  return meantBy(word.text, allowed) as T | undefined;
}

export const kindOf = (word: Word | undefined, notes: Notes): BusKind | undefined =>
  wordOf(word, busKinds, 'kind of bus', notes);
