/** SVG as text: elements, and texts of a user's file made harmless for XML. */

import { plainLine } from '../plain-text.js';

/** What XML 1.0 forbids even when escaped, beyond the control characters: halves of characters, and two non-characters. */
const forbidden = /[\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** A text as the content of an element or of an attribute in double quotes. */
export function escaped(text: string): string {
  return plainLine(text)
    .replace(forbidden, '\ufffd')
    .replace(/[&<>"]/g, (character) => entities[character]!);
}

/** An attribute that is undefined is left out. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** @param content markup, or text that has been through {@link escaped}. */
export function element(name: string, attributes: Attributes, ...content: readonly string[]): string {
  let tag = `<${name}`;
  for (const [key, value] of Object.entries(attributes)) {
    if (value !== undefined) tag += ` ${key}="${typeof value === 'number' ? shortNumber(value) : escaped(value)}"`;
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
