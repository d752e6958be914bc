/** A packet as one CSV file for each of its tables: bare numbers in the unit that the head names, a row for each row. */
import type { Packet } from '@fieldpair/shared/documents';
import { csvText } from '../csv.js';
import { safeName, uniqueNames } from '../files/safe-name.js';
import { cellData, dataHead, tablesOf } from './layout.js';

export interface TextFile {
  readonly name: string;
  readonly text: string;
}

export function packetCsv(packet: Packet): TextFile[] {
  const unique = uniqueNames();
  return tablesOf(packet).map(({ sheet, table }) => {
    const { columns, rows } = table;
    const sums = rows.filter(({ total }) => !total);
    const name = unique(safeName(`${sheet.title} ${sheet.bus ?? table.title}`.toLowerCase(), 'table'));
    return {
      name: `${name}.csv`,
      text: csvText([columns.map(dataHead), ...sums.map(({ cells }) => cells.map(cellData))]),
    };
  });
}
