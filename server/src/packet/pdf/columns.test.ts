import type { Cell } from '@fieldpair/shared/documents';
import { expect, it } from 'vitest';
import { gridOf, sum } from './columns.js';
import type { Pen } from './pen.js';

/** Each letter five points wide. */
const pen = { width: (text: string) => 5 * text.length } as unknown as Pen;
const text = (line: string): Cell => ({ kind: 'text', lines: [line] });
const widthsOf = (cells: readonly Cell[], room = 400) => {
  const columns = cells.map(() => ({ head: 'Head', width: 10 }));
  return gridOf(pen, { id: 'a', title: 'A', columns, rows: [{ group: 0, cells }], notes: [] }, 36, room);
};

it('gives what a column has over to one that would break its lines, and fills the room', () => {
  const { widths, places } = widthsOf([text('x'), text('twenty-three letters here'), { kind: 'tick' }, text('y')]);
  expect(sum(widths)).toBeCloseTo(400);
  expect(widths[1]).toBeCloseTo(5 * 25 + 6.5);
  expect(places[1]).toBeCloseTo(36 + widths[0]!);
});

it('keeps room to write in, whatever is lacking elsewhere', () => {
  const { widths } = widthsOf([{ kind: 'blank' }, text('x'.repeat(500)), text('y')]);
  expect(widths[0]).toBeCloseTo(400 / 3);
  expect(sum(widths)).toBeCloseTo(400);
  // No word of a head is broken either.
  expect(widths[2]).toBeGreaterThanOrEqual(5 * 4 + 6);
});

it('leaves shares alone where everything fits', () => {
  expect(widthsOf([text('x'), text('y')]).widths).toEqual([200, 200]);
});
