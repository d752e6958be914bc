/** A packet as one workbook: a first sheet of what it is, then a sheet for each table, ready to be printed. */
import { type Packet, type Sheet, shortCaution, type Table } from '@fieldpair/shared/documents';
import { type Cell, type CellStyle, type CellValue, type WriteSheet, writeXlsx } from 'hucre/xlsx';
import { cellData, dataHead, sheetName, tablesOf } from './layout.js';

const line = { style: 'thin', color: { rgb: '555555' } } as const;
const grid = { top: line, bottom: line, left: line, right: line };
const body: CellStyle = { border: grid, alignment: { vertical: 'top', wrapText: true } };
const strong: CellStyle = { ...body, font: { bold: true } };
const head: CellStyle = { ...strong, fill: { type: 'pattern', pattern: 'solid', fgColor: { rgb: 'E4E8E9' } } };

export async function packetXlsx(packet: Packet): Promise<Uint8Array> {
  const unique = sheetNames();
  const sheets = [
    cover(packet, unique('Packet')),
    ...tablesOf(packet).map(({ sheet, table }) => tableSheet(packet, sheet, table, unique(table.title))),
  ];
  const issued = new Date(`${packet.date}T00:00:00Z`);
  return writeXlsx({
    sheets,
    properties: { title: sheetTitle(packet), creator: 'Fieldpair', created: issued, modified: issued },
    defaultFont: { name: 'Calibri', size: 11 },
  });
}

const sheetTitle = ({ title }: Packet) => `${title}: installer\u2019s packet`;

/** The blocks of the title sheet that are no tables, line by line. */
function cover(packet: Packet, name: string): WriteSheet {
  const rows: string[][] = [];
  for (const block of packet.sheets[0]?.blocks ?? []) {
    if (block.kind === 'facts') rows.push(...block.facts.map(({ name: fact, value }) => [fact, value]));
    else if (block.kind === 'heading' || block.kind === 'paragraph') rows.push(['', block.text]);
    else if (block.kind === 'cautions') rows.push(...block.texts.map((text) => ['Caution', text]));
    else if (block.kind === 'list') rows.push(...block.items.map((item) => ['', item]));
    else if (block.kind === 'contents')
      rows.push(...packet.sheets.map((sheet, index) => [`Sheet ${index + 1}`, sheetName(sheet)]));
  }
  return {
    name,
    rows,
    columns: [
      { width: 22, style: { ...body, font: { bold: true } } },
      { width: 80, style: body },
    ],
    pageSetup: pageSetup(packet, false),
    headerFooter: furniture(packet, 'Installer\u2019s packet'),
  };
}

function tableSheet(packet: Packet, sheet: Sheet, table: Table, name: string): WriteSheet {
  const { columns, rows } = table;
  const cells = new Map<string, Partial<Cell>>();
  for (const [column, one] of columns.entries()) cells.set(`0,${column}`, { value: dataHead(one), style: head });
  const values: CellValue[][] = [columns.map(dataHead)];
  for (const [index, row] of rows.entries()) {
    values.push(row.cells.map(cellData));
    for (const [column, cell] of row.cells.entries()) {
      const style = row.total || (cell.kind === 'text' && cell.strong) ? strong : body;
      cells.set(`${index + 1},${column}`, { value: cellData(cell), style });
    }
  }
  return {
    name,
    rows: values,
    cells,
    columns: columns.map(({ width, head: text }) => ({ width: Math.max(width * 1.2, text.length + 2, 8) })),
    freezePane: { rows: 1 },
    pageSetup: { ...pageSetup(packet, true), printTitlesRow: '$1:$1' },
    headerFooter: furniture(packet, sheetName({ ...sheet, title: table.title })),
  };
}

const pageSetup = ({ paper }: Packet, landscape: boolean): NonNullable<WriteSheet['pageSetup']> => ({
  paperSize: paper,
  orientation: landscape ? 'landscape' : 'portrait',
  fitToPage: true,
  fitToWidth: 1,
  fitToHeight: 0,
  margins: { top: 0.8, bottom: 0.8, left: 0.5, right: 0.5, header: 0.3, footer: 0.3 },
});

/** In the codes of spreadsheets: `&L` left, `&R` right, `&P` page, `&N` pages; an ampersand itself is written twice. */
function furniture({ title, revision, date, remark }: Packet, what: string): NonNullable<WriteSheet['headerFooter']> {
  const plain = (text: string) => (text.length <= 60 ? text : `${text.slice(0, 59)}\u2026`).replaceAll('&', '&&');
  const version = revision === undefined ? '' : `revision ${plain(revision)}, `;
  return {
    oddHeader: `&L${plain(title)}${remark === undefined ? '' : `\n&B${plain(remark)}&B`}&R${plain(what)}`,
    oddFooter: `&L${version}${date}&R&P of &N\n&C${plain(shortCaution)}`,
  };
}

/** Names of sheets have at most 31 characters, none of them one of `[]:*?/\`, no apostrophe at an end, and differ. */
function sheetNames(): (title: string) => string {
  const taken = new Set<string>();
  const most = 31;
  return (title) => {
    const plain =
      title
        .replace(/[[\]:*?/\\']/g, ' ')
        .replace(/\s+/g, ' ')
        .trim() || 'Table';
    for (let number = 1; ; number++) {
      const ending = number === 1 ? '' : ` ${number}`;
      const name = cut(plain, most - ending.length) + ending;
      if (taken.has(name.toLowerCase())) continue;
      taken.add(name.toLowerCase());
      return name;
    }
  };
}

/** At most so many UTF-16 units, and no half of a character. */
const cut = (text: string, most: number) =>
  text
    .slice(0, most)
    .replace(/[\ud800-\udbff]$/, '')
    .trim();
