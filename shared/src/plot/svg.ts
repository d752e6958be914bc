/** SVG as text: elements, and texts of a user's file made harmless for XML. */

import { escaped } from '../markup.js';
import { plainLine } from '../plain-text.js';

/** A line as the content of an element or of a quoted attribute. */
export const escapedLine = (text: string): string => escaped(plainLine(text));

/** An attribute that is undefined is left out. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** @param content markup, or text that has been through {@link escapedLine}. */
export function element(name: string, attributes: Attributes, ...content: readonly string[]): string {
  let tag = `<${name}`;
  for (const [key, value] of Object.entries(attributes)) {
    if (value !== undefined) tag += ` ${key}="${typeof value === 'number' ? shortNumber(value) : escapedLine(value)}"`;
  }
  return content.length === 0 ? `${tag}/>` : `${tag}>${content.join('')}</${name}>`;
}

/** A coordinate to a hundredth of a pixel, without digits that nobody sees. */
const shortNumber = (value: number): string => String(Math.round(value * 100) / 100);

/** A text longer than `most` characters, cut in the middle so that its beginning and its end stay. */
export function shortened(text: string, most: number): string {
  const characters = [...text];
  if (characters.length <= most) return text;
  const kept = most - 1;
  return `${characters.slice(0, Math.ceil(kept / 2)).join('')}\u2026${characters.slice(characters.length - Math.floor(kept / 2)).join('')}`;
}
