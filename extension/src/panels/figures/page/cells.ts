/** Cells of tables: what they say, and how. */
import { make } from '../../page/make.js';

export interface GridCell {
  /** Cells with equal keys at one place are the same and stay as they are. */
  readonly key: string;
  readonly content: () => readonly (string | Node)[];
}

export const plainCell = (text: string): GridCell => ({ key: text, content: () => [text] });

/** A figure whose range, which stands in brackets behind it, goes to a line of its own when the column is narrow. */
export function figureCell(text: string): GridCell {
  const [, value, range] = /^([^()]+) (\([^()]+\))$/.exec(text) ?? [];
  if (value === undefined || range === undefined) return plainCell(text);
  return { key: text, content: () => [`${value} `, make('span', { className: 'range' }, range)] };
}
