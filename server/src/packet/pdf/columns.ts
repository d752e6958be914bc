/** How wide the columns of a table are. */
import type { Cell, Column, Table } from '@fieldpair/shared/documents';
import { columnHead } from '../layout.js';
import type { Pen } from './pen.js';

/** To the left and right of what a cell says. */
export const padding = 3;

export const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

/** Columns at places from the left margin on. */
export interface Grid {
  readonly columns: readonly Column[];
  readonly places: readonly number[];
  readonly widths: readonly number[];
}

/** By their shares, but what a column does not need goes to those that would otherwise break lines. */
export function gridOf(pen: Pen, { columns, rows }: Table, left: number, room: number): Grid {
  const least = columns.map((column) => leastWidth(pen, column));
  const shared = sharedWidths(
    columns.map(({ width }) => width),
    least,
    room,
  );
  const wanted = shared.map((width, index) =>
    Math.max(least[index]!, ...rows.map(({ cells, total }) => cellWidth(pen, cells[index]!, width, total === true))),
  );
  const widths = traded(shared, wanted);
  const places: number[] = [];
  let x = left;
  for (const width of widths) {
    places.push(x);
    x += width;
  }
  return { columns, places, widths };
}

/** No word of a head is broken. */
const leastWidth = (pen: Pen, column: Column) =>
  Math.max(
    ...columnHead(column)
      .split(' ')
      .map((word) => pen.width(word, undefined, 'bold')),
  ) +
  2 * padding +
  0.5;

/** What a cell takes unbroken; room to write in is never given away. */
function cellWidth(pen: Pen, cell: Cell, shared: number, strong: boolean): number {
  const textWidth = (text: string, isStrong: boolean) => pen.width(text, undefined, isStrong ? 'bold' : 'regular');
  switch (cell.kind) {
    case 'text':
      return (
        Math.max(0, ...cell.lines.map((line, at) => textWidth(line, strong || (cell.strong === true && at === 0)))) +
        slack
      );
    case 'number':
      return textWidth(cell.text, strong) + slack;
    case 'picture':
      return cell.picture.width + slack;
    case 'blank':
      return shared;
    case 'tick':
    case 'none':
      return 0;
  }
}

/** Padding, and a little for the last digits of sums. */
const slack = 2 * padding + 0.5;

/** The same widths together: columns that have more than they want give it to those that have less, in proportion. */
function traded(widths: readonly number[], wanted: readonly number[]): number[] {
  const lacking = sum(widths.map((width, index) => Math.max(0, wanted[index]! - width)));
  const spare = sum(widths.map((width, index) => Math.max(0, width - wanted[index]!)));
  if (lacking === 0 || spare === 0) return [...widths];
  const moved = Math.min(lacking, spare);
  return widths.map((width, index) => {
    const less = wanted[index]! - width;
    return 0 < less ? width + (less * moved) / lacking : width + (less * moved) / spare;
  });
}

/** By shares, but for columns that would get less than their least: the others share what is left. */
function sharedWidths(shares: readonly number[], least: readonly number[], room: number): number[] {
  const fixed = new Set<number>();
  for (;;) {
    const taken = sum([...fixed].map((index) => least[index]!));
    const total = sum(shares.filter((_, index) => !fixed.has(index)));
    const widths = shares.map((share, index) => (fixed.has(index) ? least[index]! : ((room - taken) * share) / total));
    const short = widths.flatMap((width, index) => (!fixed.has(index) && width < least[index]! ? index : []));
    // When even the least of all is too much, shares alone decide.
    if (short.length === 0) return widths;
    for (const index of short) fixed.add(index);
    if (fixed.size === shares.length || room <= sum([...fixed].map((index) => least[index]!))) {
      return shares.map((share) => (room * share) / sum(shares));
    }
  }
}
