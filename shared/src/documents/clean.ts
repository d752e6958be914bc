/** Text of a user's file, made fit for every format. */

/**
 * Control characters, which XML forbids and programs act on; characters that turn the direction of writing, with
 * which a name can be made to read as another; halves of surrogate pairs and the two non-characters, which are no text.
 */
const unfit = /[\p{Cc}\p{Cs}\u2028\u2029\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff\ufffe\uffff]/gu;
const space = /[\t\r\n\u0085\u2028\u2029]+/g;

/** Line breaks and tabs become spaces, and what no format can carry becomes `\uFFFD`. */
export const clean = (text: string): string => text.replace(space, ' ').replace(unfit, '\uFFFD');

/** The same plain data with every text in it made fit; texts that are fit already, and the numbers, stay as they are. */
export function cleaned<T>(value: T): T {
  if (typeof value === 'string') return clean(value) as T;
  if (Array.isArray(value)) return value.map(cleaned) as T;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, cleaned(one)])) as T;
}
