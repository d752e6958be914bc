/** Text of a user's file, made fit for every format. */

/**
 * Control characters, which XML forbids and programs act on; characters that turn the direction of writing, with
 * which a name can be made to read as another; halves of surrogate pairs and the two non-characters, which are no text.
 */
const unfit = /[\p{Cc}\p{Cs}\u2028\u2029\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff\ufffe\uffff]/u;
const everyUnfit = new RegExp(unfit, 'gu');
const space = /[\t\r\n\u0085\u2028\u2029]+/g;

/** Line breaks and tabs become spaces, and what no format can carry becomes `\uFFFD`. */
export const clean = (text: string): string =>
  unfit.test(text) ? text.replace(space, ' ').replace(everyUnfit, '\uFFFD') : text;

/** The same plain data with every text in it made fit; what is fit already stays the object that it was. */
export function cleaned<T>(value: T): T {
  if (typeof value === 'string') return clean(value) as T;
  if (typeof value !== 'object' || value === null) return value;
  let copy: typeof value | undefined;
  for (const key in value) {
    const fit = cleaned(value[key]);
    if (fit === value[key]) continue;
    copy ??= (Array.isArray(value) ? [...value] : { ...value }) as typeof value;
    copy[key] = fit;
  }
  return copy ?? value;
}
