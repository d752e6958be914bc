/** A table over as many pages as it takes: heads on each page, rows of a group together, merged cells as one. */
import type { Cell, Row, Table } from '@fieldpair/shared/documents';
import { columnHead, dash, groupsOf } from '../layout.js';
import { type Grid, gridOf, padding, sum } from './columns.js';
import type { Pages } from './page.js';
import { leading, type Pen } from './pen.js';
import { drawPicture } from './picture.js';

/** Above and below, where lines keep their own distance. */
const inset = 2;
const tickSize = 11;
/** Room to write by hand. */
const blankHeight = 18;

/** A cell that was measured for the width of its column. */
interface SetCell {
  readonly height: number;
  draw(x: number, y: number, width: number): void;
}

export function setTable(pages: Pages, table: Table): void {
  pages.pen.tags.element('Table', () => setRows(pages, table));
}

function setRows(pages: Pages, table: Table): void {
  const { pen } = pages;
  const grid = gridOf(pen, table, pages.left, pages.width);
  const heads = headCells(pen, grid);
  const headHeight = tallest(heads);
  const mostRows = pages.height - headHeight - 2 * leading;
  const groups = groupsOf(table.rows).map(({ rows }) => rows.map((row) => setRow(pen, grid, row, mostRows)));
  const heights = groups.map((group) => rowHeights(group, grid));

  pen.tags.element('Caption', () =>
    caption(pages, table.title, headHeight + Math.min(sum(heights[0] ?? []), pages.height / 2)),
  );
  if (groups.length === 0) return;
  drawHeads(pages, grid, heads, headHeight);
  for (const [index, group] of groups.entries()) {
    for (const part of partsOf(group, heights[index]!, grid, mostRows)) {
      const height = sum(part.heights);
      if (pages.room < height) {
        pages.next();
        // Said once is enough for who hears the table.
        pen.tags.artifact(() => {
          caption(pages, `${table.title} (continued)`, 0);
          drawHeads(pages, grid, heads, headHeight);
        }, 'Pagination');
      }
      drawGroup(pages, grid, part);
    }
  }
}

const tallest = (cells: readonly SetCell[]) => Math.max(...cells.map(({ height }) => height));

function caption(pages: Pages, title: string, following: number): void {
  const { pen } = pages;
  const lines = pen.lines(title, pages.width, 11.5, 'bold').slice(0, 2);
  pages.need(lines.length * 15 + following + 6);
  pages.y += 4;
  for (const line of lines) {
    pen.text(line, pages.left, pages.y, { size: 11.5, weight: 'bold' });
    pages.y += 15;
  }
  pages.y += 2;
}

function headCells(pen: Pen, { columns, widths }: Grid): SetCell[] {
  return columns.map((column, index) =>
    textCell(pen, [columnHead(column)], widths[index]!, 'all', Number.POSITIVE_INFINITY),
  );
}

function drawHeads(pages: Pages, { places, widths }: Grid, heads: readonly SetCell[], height: number): void {
  const { pen } = pages;
  pen.tags.element('TR', () => {
    for (const [index, head] of heads.entries()) {
      pen.box(places[index]!, pages.y, widths[index]!, height, { fill: '#e4e8e9' });
      pen.tags.element('TH', () => head.draw(places[index]!, pages.y, widths[index]!), { scope: 'Column' });
    }
  });
  pages.y += height;
}

interface SetRow {
  readonly row: Row;
  readonly cells: readonly SetCell[];
}

const setRow = (pen: Pen, { widths }: Grid, row: Row, most: number): SetRow => ({
  row,
  cells: row.cells.map((cell, index) => setCell(pen, cell, widths[index]!, row.total === true, most)),
});

/** Rows high enough for their own cells, the last one for what the merged cells need beyond that. */
function rowHeights(group: readonly SetRow[], { columns }: Grid): number[] {
  const own = group.map(({ cells }) =>
    tallest(cells.map((cell, index) => (columns[index]!.merged ? { ...cell, height: 0 } : cell))),
  );
  const merged = Math.max(0, ...group[0]!.cells.map(({ height }, index) => (columns[index]!.merged ? height : 0)));
  const lacking = merged - sum(own);
  if (0 < lacking) own[own.length - 1]! += lacking;
  return own;
}

interface GroupPart {
  readonly rows: readonly SetRow[];
  readonly heights: readonly number[];
}

/** A group whole, or, when no page could hold it, in parts that each fit and each show the merged cells. */
function partsOf(rows: readonly SetRow[], heights: readonly number[], grid: Grid, most: number): GroupPart[] {
  if (sum(heights) <= most) return [{ rows, heights }];
  const parts: SetRow[][] = [];
  for (const row of rows) {
    const last = parts.at(-1);
    if (last && sum(rowHeights([...last, row], grid)) <= most) last.push(row);
    else parts.push([row]);
  }
  return parts.map((part) => ({ rows: part, heights: rowHeights(part, grid) }));
}

function drawGroup(pages: Pages, { columns, places, widths }: Grid, { rows, heights }: GroupPart): void {
  const { pen } = pages;
  const whole = sum(heights);
  const top = pages.y;
  for (const [index, { cells }] of rows.entries()) {
    pen.tags.element('TR', () => {
      for (const [column, cell] of cells.entries()) {
        const merged = columns[column]!.merged === true;
        if (merged && 0 < index) continue;
        pen.box(places[column]!, pages.y, widths[column]!, merged ? whole : heights[index]!, { stroke: 0.5 });
        const draw = () => cell.draw(places[column]!, pages.y, widths[column]!);
        pen.tags.element('TD', draw, { rows: merged ? rows.length : 1 });
      }
    });
    pages.y += heights[index]!;
  }
  pen.box(pages.left, top, pages.width, whole, { stroke: 1 < rows.length ? 1.2 : 0.5 });
}

function setCell(pen: Pen, cell: Cell, width: number, strong: boolean, most: number): SetCell {
  switch (cell.kind) {
    case 'text':
      return textCell(pen, cell.lines, width, strong ? 'all' : cell.strong ? 'first' : 'none', most);
    case 'number':
      return textCell(pen, [cell.text], width, strong ? 'all' : 'none', most);
    case 'none':
      return textCell(pen, [dash], width, 'none', most);
    case 'blank':
      return { height: blankHeight, draw: () => undefined };
    case 'tick':
      return {
        height: tickSize + 2 * inset,
        draw: (x, y, across) => pen.box(x + (across - tickSize) / 2, y + inset, tickSize, tickSize, { stroke: 0.9 }),
      };
    case 'picture': {
      const { picture, caption } = cell;
      const scale = Math.min(1, (width - 2 * padding) / picture.width);
      const below = caption === undefined ? undefined : textCell(pen, [caption], width, 'none', most);
      const height = picture.height * scale + 2 * inset;
      return {
        height: height + (below?.height ?? 0),
        draw: (x, y, across) => {
          const draw = () => drawPicture(pen, picture, x + padding, y + inset, scale);
          pen.tags.element('Figure', () => pen.tags.content(draw), { alt: cell.text });
          below?.draw(x, y + height - inset, across);
        },
      };
    }
  }
}

/** @param strong which lines stand out @param most the height that no cell may exceed: what is beyond is left out */
function textCell(
  pen: Pen,
  texts: readonly string[],
  width: number,
  strong: 'all' | 'first' | 'none',
  most: number,
): SetCell {
  const room = width - 2 * padding;
  const lines = texts.flatMap((text, index) => {
    const weight = strong === 'all' || (strong === 'first' && index === 0) ? 'bold' : 'regular';
    return pen.lines(text, room, undefined, weight).map((line) => ({ line, weight }) as const);
  });
  const fitting = Math.max(1, Math.floor((most - 2 * inset) / leading));
  const shown =
    lines.length <= fitting ? lines : [...lines.slice(0, fitting - 1), { line: '\u2026', weight: 'regular' as const }];
  return {
    height: shown.length * leading + 2 * inset,
    draw: (x, y) => {
      for (const [index, { line, weight }] of shown.entries()) {
        pen.text(line, x + padding, y + inset + index * leading, { weight });
      }
    },
  };
}
