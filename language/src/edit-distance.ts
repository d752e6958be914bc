/** How far two words are apart. */

/**
 * The fewest insertions, deletions, replacements and swaps of neighbours that lead from one word to the other, where
 * no stretch is changed twice: the distance of Damerau (1964) as optimal string alignment. More than `most` comes out
 * as `most + 1` or more.
 */
export function editDistance(left: string, right: string, most = Number.POSITIVE_INFINITY): number {
  if (Math.abs(left.length - right.length) > most) return most + 1;
  let beforeLast: number[] = [];
  let last = Array.from({ length: right.length + 1 }, (_, index) => index);
  for (let row = 1; row <= left.length; row++) {
    const current = [row];
    for (let column = 1; column <= right.length; column++) {
      const same = left[row - 1] === right[column - 1];
      let best = Math.min(last[column]! + 1, current[column - 1]! + 1, last[column - 1]! + (same ? 0 : 1));
      if (row > 1 && column > 1 && left[row - 1] === right[column - 2] && left[row - 2] === right[column - 1]) {
        best = Math.min(best, beforeLast[column - 2]! + 1);
      }
      current.push(best);
    }
    [beforeLast, last] = [last, current];
  }
  return last[right.length]!;
}

/** How many slips of the hand are likely in a word: one, in long ones a few. */
export const likelySlips = (word: string): number => Math.max(1, Math.floor(word.length / 3));

/** Whether a word is short for another: it begins alike, and all its letters are in the other in their order. */
export function abbreviates(short: string, long: string): boolean {
  if (short.length < 3 || long.length <= short.length || short[0] !== long[0]) return false;
  let found = 0;
  for (const letter of long) if (letter === short[found]) found++;
  return found === short.length;
}
