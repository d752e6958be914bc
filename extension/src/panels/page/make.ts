/** Making elements in few words, so that no text ever passes for markup. */
import { shownText } from './shown-text.js';

type Properties<Name extends keyof HTMLElementTagNameMap> = Partial<Omit<HTMLElementTagNameMap[Name], 'style'>>;

/** An element with properties, and with texts or elements in it. */
export function make<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  properties: Properties<Name> = {},
  ...content: readonly (string | Node)[]
): HTMLElementTagNameMap[Name] {
  const element = document.createElement(name);
  Object.assign(element, properties);
  element.append(...content.map((one) => (typeof one === 'string' ? shownText(one) : one)));
  return element;
}
