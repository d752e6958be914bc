/**
 * Figures that carry how sure they are: a {@link Range} over tolerances, or an {@link Unknown} that names what is
 * missing. Nothing is guessed: a computation that lacks a value says which one.
 */

/** A figure with the least and the most that it can be over the stated tolerances. */
export interface Range<T extends number> {
  readonly nominal: T;
  readonly low: T;
  readonly high: T;
}

/** Why a figure cannot be computed: a clause that can follow 'unknown: ' and names what is missing. */
export interface Unknown {
  readonly unknown: string;
}
export type Known<T> = T | Unknown;
export function isUnknown(value: unknown): value is Unknown {
  return typeof value === 'object' && value !== null && 'unknown' in value;
}

/** At most four names in a row: `a, b and c`, `a, b, c, d and 3 more`. */
export function listed(names: readonly string[]): string {
  const shown = names.slice(0, 4);
  if (names.length > shown.length) return `${shown.join(', ')} and ${names.length - shown.length} more`;
  return allListed(shown);
}

/** However many: `a, b and c`, or `a, b or c`. */
export const allListed = (names: readonly string[], conjunction: 'and' | 'or' = 'and'): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} ${conjunction} ${names.at(-1)}`;
