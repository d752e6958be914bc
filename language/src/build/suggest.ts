/** Names that somebody may have meant. */
import type { Fix, Place } from '@fieldpair/shared';
import { keywords as reserved } from '../read/scanner.js';
import { quote } from '../read/text-value.js';

/** Single-character edits, adjacent swaps counted as one (Damerau's restricted distance), up to `most`. */
function distance(left: string, right: string, most: number): number {
  if (Math.abs(left.length - right.length) > most) return most + 1;
  let beforeLast: number[] = [];
  let last = Array.from({ length: right.length + 1 }, (_, index) => index);
  for (let row = 1; row <= left.length; row++) {
    const current = [row];
    for (let column = 1; column <= right.length; column++) {
      const same = left[row - 1] === right[column - 1];
      let best = Math.min(
        (last[column] ?? 0) + 1,
        (current[column - 1] ?? 0) + 1,
        (last[column - 1] ?? 0) + (same ? 0 : 1),
      );
      if (row > 1 && column > 1 && left[row - 1] === right[column - 2] && left[row - 2] === right[column - 1]) {
        best = Math.min(best, (beforeLast[column - 2] ?? 0) + 1);
      }
      current.push(best);
    }
    [beforeLast, last] = [last, current];
  }
  return last[right.length] ?? most + 1;
}

/** The known names nearest to what was written, nearest first, three at most. */
export function nearest(written: string, known: Iterable<string>): string[] {
  const most = Math.max(1, Math.floor(written.length / 3));
  if (written.length > 60) return [];
  const found: { name: string; steps: number }[] = [];
  for (const name of known) {
    const steps = distance(written.toLowerCase(), name.toLowerCase(), most);
    if (steps <= most) found.push({ name, steps });
  }
  found.sort((left, right) => left.steps - right.steps || (left.name < right.name ? -1 : 1));
  return found.slice(0, 3).map(({ name }) => name);
}

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

/** The same for references, which may hold a dot, so that they are written as they are. */
export const referenceFixes = (place: Place, names: readonly string[]): Fix[] =>
  names.map((name) => ({ title: `Change to ${name}`, safe: false, edits: [{ kind: 'write', place, text: name }] }));

/** A name as it is written: bare where the grammar takes it so, else in quotes. */
export function nameText(name: string): string {
  return /^[A-Za-z_]\w*$/.test(name) && !reserved.has(name) ? name : quote(name);
}
