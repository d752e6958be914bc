/** Figures in tables. Styles are in theme.css. */
import { make } from './make.js';

/** Names and figures up to so many letters stay on one line. */
const mostUnbroken = 12;

/** The class of a cell for its text. */
export const cellClass = (text: string): string => (text.length <= mostUnbroken ? 'short' : '');

/** A number stays with its unit. */
const unbroken = (text: string) => text.replaceAll(' ', '\u00a0');

/** A figure whose range, which stands in brackets behind it, goes to a line of its own when the column is narrow, or to two. */
export function figureNodes(text: string): (string | Node)[] {
  const [, value, range] = /^([^()]+) (\([^()]+\))$/.exec(text) ?? [];
  if (value === undefined || range === undefined) return [text];
  return [
    `${unbroken(value)} `,
    make('span', { className: 'range' }, unbroken(range).replace('\u00a0to\u00a0', '\u00a0to ')),
  ];
}
