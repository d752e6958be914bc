/** Names that somebody may have meant. */
import type { Fix, Place } from '@fieldpair/shared';
import { abbreviates, editDistance, likelySlips } from '../edit-distance.js';
import { keywords as reserved } from '../read/scanner.js';
import { quote } from '../read/text-value.js';

/**
 * The known names nearest to what was written, nearest first, three at most: by slips of the hand, case aside, else
 * those that it is short for or a part of.
 */
export function nearest(written: string, known: Iterable<string>): string[] {
  return ranked(written, known)
    .slice(0, 3)
    .map(({ name }) => name);
}

/** The name that is nearer than any other. */
export function meantBy(written: string, known: Iterable<string>): string | undefined {
  const [first, second] = ranked(written, known);
  return first && second && byNearness(first, second) === 0 ? undefined : first?.name;
}

interface Candidate {
  readonly name: string;
  readonly steps: number;
  /** How many letters it has in common with what was written. */
  readonly shared: number;
  /** Few slips are in the first letter. */
  readonly alike: boolean;
}

const byNearness = (left: Candidate, right: Candidate) =>
  left.steps - right.steps || right.shared - left.shared || Number(right.alike) - Number(left.alike);

function ranked(written: string, known: Iterable<string>): Candidate[] {
  const word = written.toLowerCase();
  if (word.length > 60) return [];
  const most = likelySlips(word);
  const found: Candidate[] = [];
  const others: Candidate[] = [];
  for (const name of known) {
    const lower = name.toLowerCase();
    const steps = editDistance(word, lower, most);
    const alike = lower[0] === word[0];
    if (steps <= most) found.push({ name, steps, shared: sharedLetters(word, lower), alike });
    else if (isPart(word, lower)) others.push({ name, steps: lower.length, shared: word.length, alike });
  }
  return (found.length ? found : others).sort(
    (left, right) => byNearness(left, right) || (left.name < right.name ? -1 : 1),
  );
}

function sharedLetters(left: string, right: string): number {
  let rest = right;
  for (const letter of left) rest = rest.replace(letter, '');
  return right.length - rest.length;
}

/** `modbus` of `modbus-rtu`, `adr` for `address`. */
const isPart = (word: string, name: string) =>
  abbreviates(word, name) || (2 < word.length && name.split(/[-.]/).includes(word));

/** `; did you mean caseA1?` or nothing. */
export function didYouMean(names: readonly string[]): string {
  return names.length ? `; did you mean ${names.join(' or ')}?` : '';
}

/** One fix for each suggestion. The first is never applied unasked: only its author knows what was meant. */
export function renameFixes(place: Place, names: readonly string[]): Fix[] {
  return names.map((name) => ({
    title: `Change to ${name}`,
    safe: false,
    edits: [{ kind: 'write', place, text: nameText(name) }],
  }));
}

/** The same for what is written as it is, which no name is: words, units, references with a dot. */
export const writeFixes = (place: Place, texts: readonly string[]): Fix[] =>
  texts.map((text) => ({ title: `Change to ${text}`, safe: false, edits: [{ kind: 'write', place, text }] }));

/** A name as it is written: bare where the grammar takes it so, else in quotes. */
export function nameText(name: string): string {
  return /^[A-Za-z_]\w*$/.test(name) && !reserved.has(name) ? name : quote(name);
}
