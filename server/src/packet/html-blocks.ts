/** The blocks of a sheet as HTML. */
import { escaped } from '@fieldpair/shared';
import type { Block, Cell, Column, Packet, Row, Table } from '@fieldpair/shared/documents';
import { columnHead, dash, groupsOf, sheetName, spansOf } from './layout.js';
import { pictureSvg } from './svg.js';

/** @param heading the level below that of the sheet's title */
export const blocksHtml = (blocks: readonly Block[], packet: Packet, heading: 'h2' | 'h3'): string =>
  blocks.map((block) => blockHtml(block, packet, heading)).join('\n');

function blockHtml(block: Block, packet: Packet, heading: 'h2' | 'h3'): string {
  switch (block.kind) {
    case 'heading':
      return `<${heading} class="part">${escaped(block.text)}</${heading}>`;
    case 'paragraph':
      return `<p${block.strong ? ' class="strong"' : ''}>${escaped(block.text)}</p>`;
    case 'cautions':
      return `<div class="cautions"><p class="head">Caution</p>${list('ul', block.texts)}</div>`;
    case 'facts':
      return `<dl>${block.facts.map(({ name, value }) => `<div><dt>${escaped(name)}</dt><dd><bdi>${escaped(value)}</bdi></dd></div>`).join('')}</dl>`;
    case 'list':
      return list('ul', block.items);
    case 'steps':
      return list('ol class="steps"', block.steps);
    case 'contents':
      return `<${heading} class="part">Contents</${heading}><ol id="contents">${packet.sheets.map((sheet) => `<li><a href="#${sheet.id}">${escaped(sheetName(sheet))}</a></li>`).join('')}</ol>`;
    case 'signatures':
      return `<dl class="signatures">${block.lines.map((line) => `<div><dt>${escaped(line)}</dt><dd></dd></div>`).join('')}</dl>`;
    case 'table':
      return tableHtml(block.table, heading);
    case 'drawing':
      return `<div class="drawing wide">${pictureSvg(block.wide)}</div><div class="drawing narrow">${pictureSvg(block.narrow)}</div>`;
  }
}

function list(tag: string, items: readonly string[]): string {
  return `<${tag}>${items.map((item) => `<li>${escaped(item)}</li>`).join('')}</${tag.split(' ')[0]}>`;
}

/** Roles are written out because a narrow screen lays rows out as blocks, which takes the roles of their own away. */
function tableHtml(table: Table, heading: 'h2' | 'h3'): string {
  const { columns, rows } = table;
  const sum = columns.reduce((total, { width }) => total + width, 0);
  const widths = columns.map(({ width }) => `<col style="width:${((100 * width) / sum).toFixed(2)}%">`).join('');
  const heads = columns.map((column) => `<th role="columnheader" scope="col">${escaped(columnHead(column))}</th>`);
  const spans = spansOf(table);
  const notes = table.notes.map((note) => `<p class="note">${escaped(note)}</p>`).join('');
  if (rows.length === 0) return `<${heading} class="part">${escaped(table.title)}</${heading}>${notes}`;
  return `<table role="table"><caption>${escaped(table.title)}</caption><colgroup>${widths}</colgroup>
<thead role="rowgroup"><tr role="row">${heads.join('')}</tr></thead>
${groupsOf(rows)
  .map((group) => groupHtml(group, columns, spans))
  .join('\n')}
</table>${notes}`;
}

function groupHtml(
  { first, rows }: ReturnType<typeof groupsOf>[number],
  columns: readonly Column[],
  spans: readonly (readonly number[])[],
): string {
  const total = rows[0]!.total ? ' class="total"' : '';
  return `<tbody role="rowgroup"${total}>${rows.map((row, index) => rowHtml(row, columns, spans[first + index]!)).join('')}</tbody>`;
}

function rowHtml(row: Row, columns: readonly Column[], spans: readonly number[]): string {
  const cells = row.cells.map((cell, column) => {
    const rows = spans[column]!;
    if (rows === 0) return '';
    const span = rows === 1 ? '' : ` rowspan="${rows}"`;
    return `<td role="cell"${span} data-head="${escaped(columnHead(columns[column]!))}"${cellClass(cell)}>${cellHtml(cell)}</td>`;
  });
  return `<tr role="row">${cells.join('')}</tr>`;
}

function cellClass(cell: Cell): string {
  const name = { text: '', none: 'none', number: 'number', tick: 'tick', blank: 'blank', picture: 'picture' }[
    cell.kind
  ];
  return name === '' ? '' : ` class="${name}"`;
}

function cellHtml(cell: Cell): string {
  switch (cell.kind) {
    case 'text':
      return cell.lines
        .map((line, index) => `<bdi${cell.strong && index === 0 ? ' class="strong"' : ''}>${escaped(line)}</bdi>`)
        .join('<br>');
    case 'number':
      return escaped(cell.text);
    case 'none':
      return `<span>${dash}</span>`;
    case 'tick':
      return '<span class="box" role="img" aria-label="to tick"></span>';
    case 'blank':
      return '<span class="line" role="img" aria-label="to fill in"></span>';
    case 'picture':
      return `${pictureSvg(cell.picture)}${cell.caption === undefined ? '' : `<br><span>${escaped(cell.caption)}</span>`}`;
  }
}
