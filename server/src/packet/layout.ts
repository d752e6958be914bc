/** What all formats share in setting a packet: names of sheets, heads of columns, cells that span rows. */
import type { Cell, Column, Packet, Row, Sheet, Table } from '@fieldpair/shared/documents';

/** `Landing schedule, Medium-temperature cases`. */
export const sheetName = ({ title, bus }: Sheet): string => (bus === undefined ? title : `${title}, ${bus}`);

/** The head on paper, where a unit may stand in each cell. */
export const columnHead = ({ head, unit, unitInText }: Column): string =>
  unit === undefined || unitInText ? head : `${head}, ${unit}`;

/** The head over bare numbers. */
export const dataHead = ({ head, unit }: Column): string => (unit === undefined ? head : `${head} (${unit})`);

/** On paper, where there is nothing to say. */
export const dash = '\u2013';

/** A cell as bare data: a number, a text, or null for what is to be filled in. */
export function cellData(cell: Cell): number | string | null {
  switch (cell.kind) {
    case 'number':
      return cell.value;
    case 'text':
      return cell.lines.join('; ');
    case 'picture':
      return cell.text;
    case 'none':
    case 'tick':
    case 'blank':
      return null;
  }
}

/** Per row and column: how many rows the cell covers, 0 where it is covered itself. */
export function spansOf({ rows, columns }: Pick<Table, 'rows' | 'columns'>): number[][] {
  const spans = rows.map(() => columns.map(() => 1));
  for (const [column, { merged }] of columns.entries()) {
    if (!merged) continue;
    let first = 0;
    for (let row = 1; row < rows.length; row++) {
      if (rows[row]!.group === rows[first]!.group) {
        spans[row]![column] = 0;
        spans[first]![column]!++;
      } else first = row;
    }
  }
  return spans;
}

/** All tables of a packet with the sheets that they are on. */
export function tablesOf({ sheets }: Packet): { readonly sheet: Sheet; readonly table: Table }[] {
  return sheets.flatMap((sheet) =>
    sheet.blocks.flatMap((block) => (block.kind === 'table' ? { sheet, table: block.table } : [])),
  );
}

/** Rows that stay together. */
export function groupsOf(rows: readonly Row[]): { readonly first: number; readonly rows: readonly Row[] }[] {
  const groups: { first: number; rows: Row[] }[] = [];
  for (const [index, row] of rows.entries()) {
    const last = groups.at(-1);
    if (last?.rows[0]?.group === row.group) last.rows.push(row);
    else groups.push({ first: index, rows: [row] });
  }
  return groups;
}
