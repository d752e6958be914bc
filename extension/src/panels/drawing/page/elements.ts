/** Elements made by hand, so that no text ever passes for markup. */
import { shownText } from '../../page/shown-text.js';

export function element<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  attributes: Readonly<Record<string, string>> = {},
  children: readonly (Node | string)[] = [],
): HTMLElementTagNameMap[Name] {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  made.append(...children.map((one) => (typeof one === 'string' ? shownText(one) : one)));
  return made;
}

const svg = 'http://www.w3.org/2000/svg';

export function svgElement<Name extends keyof SVGElementTagNameMap>(
  name: Name,
  attributes: Readonly<Record<string, string>> = {},
): SVGElementTagNameMap[Name] {
  const made = document.createElementNS(svg, name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  return made;
}

/** Markup of several groups of SVG elements, each parsed as XML, which runs nothing and loads nothing. */
export function parsedGroups(markups: readonly string[]): Element[][] {
  const source = `<svg xmlns="${svg}">${markups.map((markup) => `<g>${markup}</g>`).join('')}</svg>`;
  const parsed = new DOMParser().parseFromString(source, 'image/svg+xml');
  return [...parsed.documentElement.children].map((group) => [...group.children]);
}
