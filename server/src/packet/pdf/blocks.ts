/** The blocks of a sheet on the pages of a PDF. */
import type { Block, Packet } from '@fieldpair/shared/documents';
import { sheetName } from '../layout.js';
import type { Pages } from './page.js';
import { leading } from './pen.js';
import { setPicture } from './picture.js';
import { setTable } from './table.js';
import type { OpenElement } from './tags.js';
import type { Weight } from './typeface.js';

/** A line of the contents that waits for its page number. */
export interface ContentsLine {
  readonly sheet: number;
  readonly page: number;
  /** Where its number ends, and the top of its line. */
  readonly right: number;
  readonly y: number;
  readonly element: OpenElement;
}

const gap = 6;

/** @param level of headings */
export function setBlock(pages: Pages, block: Block, level: number, packet: Packet, contents: ContentsLine[]): void {
  switch (block.kind) {
    case 'heading':
      pages.need(5 * leading);
      setHeading(pages, block.text, level);
      return;
    case 'paragraph':
      setParagraph(pages, block.text, block.strong ? { size: 11.5, weight: 'bold' } : {});
      pages.y += gap;
      return;
    case 'cautions':
      setCautions(pages, block.texts);
      return;
    case 'facts':
      setFacts(pages, block.facts);
      return;
    case 'list':
      setList(pages, block.items, (y) => pages.pen.text('\u2022', pages.left + 2, y));
      return;
    case 'steps':
      setSteps(pages, block.steps);
      return;
    case 'contents':
      setContents(pages, level, packet, contents);
      return;
    case 'signatures':
      setSignatures(pages, block.lines);
      return;
    case 'table':
      setTable(pages, block.table);
      pages.y += 3;
      for (const note of block.table.notes) setParagraph(pages, note);
      pages.y += gap;
      return;
    case 'drawing':
      setPicture(pages, block.wide);
      pages.y += gap;
      return;
  }
}

function setHeading(pages: Pages, text: string, level: number): void {
  pages.y += gap;
  pages.pen.tags.element(`H${level}`, () => setText(pages, text, { size: 11.5, weight: 'bold' }));
}

interface TextLook {
  readonly size?: number;
  readonly weight?: Weight;
  readonly indent?: number;
}

export const setParagraph = (pages: Pages, text: string, look: TextLook = {}) =>
  pages.pen.tags.element('P', () => setText(pages, text, look));

function setText(pages: Pages, text: string, { size = 10, weight = 'regular', indent = 0 }: TextLook = {}): void {
  const height = size * 1.25;
  for (const line of pages.pen.lines(text, pages.width - indent, size, weight)) {
    pages.need(height);
    pages.pen.text(line, pages.left + indent, pages.y, { size, weight });
    pages.y += height;
  }
}

function setCautions(pages: Pages, texts: readonly string[]): void {
  const { pen, left, width } = pages;
  const inner = width - 34;
  const lines = texts.map((text) => pen.lines(text, inner, undefined, 'bold'));
  const height = lines.flat().length * leading + 2 * leading + 8;
  pages.need(height);
  pages.y += 2;
  pen.box(left, pages.y, width, height, { stroke: 2.2 });
  pen.tags.element('P', () => pen.text('CAUTION', left + 10, pages.y + 6, { size: 12, weight: 'bold' }));
  let y = pages.y + 6 + 1.5 * leading;
  pen.tags.element('L', () => {
    for (const paragraph of lines) {
      const body = () => {
        for (const line of paragraph) {
          pen.text(line, left + 22, y, { weight: 'bold' });
          y += leading;
        }
      };
      setItem(pages, () => pen.text('\u2022', left + 11, y, { weight: 'bold' }), body);
    }
  });
  pages.y += height + gap + 2;
}

function setFacts(pages: Pages, facts: readonly { name: string; value: string }[]): void {
  const column = 150;
  for (const { name, value } of facts) {
    const lines = pages.pen.lines(value, pages.width - column, 11, 'bold');
    pages.need(14);
    pages.pen.tags.element('P', () => {
      pages.pen.text(`${name}:`, pages.left, pages.y, { size: 11 });
      for (const line of lines) {
        pages.need(14);
        pages.pen.text(line, pages.left + column, pages.y, { size: 11, weight: 'bold' });
        pages.y += 14;
      }
    });
  }
  pages.y += gap;
}

function setList(pages: Pages, items: readonly string[], mark: (y: number, index: number) => void, indent = 13): void {
  pages.pen.tags.element('L', () => {
    for (const [index, item] of items.entries()) {
      pages.need(Math.min(pages.pen.lines(item, pages.width - indent).length, 4) * leading);
      setItem(
        pages,
        () => mark(pages.y, index),
        () => setText(pages, item, { indent }),
      );
      pages.y += 2;
    }
  });
  pages.y += gap;
}

function setItem({ pen }: Pages, label: () => void, body: () => void): void {
  pen.tags.element('LI', () => {
    pen.tags.element('Lbl', label);
    pen.tags.element('LBody', body);
  });
}

const setSteps = (pages: Pages, steps: readonly string[]) =>
  setList(
    pages,
    steps,
    (y, index) => {
      pages.pen.box(pages.left + 1, y + 1, 10, 10, { stroke: 0.9 });
      pages.pen.text(String(index + 1), pages.left + 30, y, { weight: 'bold', anchor: 'end' });
    },
    38,
  );

/** Long contents go into two columns, down the first and on in the second. */
function setContents(pages: Pages, level: number, { sheets }: Packet, contents: ContentsLine[]): void {
  const { pen } = pages;
  const columns = sheets.length <= 20 ? 1 : 2;
  const perColumn = Math.ceil(sheets.length / columns);
  const lineHeight = leading + 1;
  const width = (pages.width - (columns - 1) * 24) / columns;
  // Contents that no page holds start at its top and leave it in one column.
  pages.need(Math.min((perColumn + 2) * lineHeight, pages.height));
  setHeading(pages, 'Contents', level);
  const toc = pen.tags.open('TOC');
  const top = pages.y;
  const fitting = Math.max(1, Math.floor(pages.room / lineHeight));
  for (const [index, sheet] of sheets.entries()) {
    const column = perColumn <= fitting ? Math.floor(index / perColumn) : 0;
    if (column === 0) pages.need(lineHeight);
    const x = pages.left + column * (width + 24);
    const y = column === 0 ? pages.y : top + (index % perColumn) * lineHeight;
    toc.add(() => {
      const element = pen.tags.open('TOCI');
      element.add(() =>
        pen.tags.link({ x, y, width, height: leading }, sheet.id, () =>
          pen.text(pen.fitted(sheetName(sheet), width - 34), x, y),
        ),
      );
      contents.push({ sheet: index, page: pages.count - 1, right: x + width, y, element });
    });
    if (column === 0) pages.y += lineHeight;
  }
  pages.y += gap;
}

function setSignatures(pages: Pages, lines: readonly string[]): void {
  const rowHeight = 26;
  const perRow = 2;
  const room = pages.width / perRow;
  pages.need(Math.ceil(lines.length / perRow) * rowHeight);
  for (const [index, line] of lines.entries()) {
    const x = pages.left + (index % perRow) * room;
    const y = pages.y + Math.floor(index / perRow) * rowHeight;
    pages.pen.tags.element('P', () => pages.pen.text(line, x, y + 9));
    const start = x + pages.pen.width(line) + 6;
    pages.pen.line(start, y + 21, x + room - 12, y + 21);
  }
  pages.y += Math.ceil(lines.length / perRow) * rowHeight + gap;
}
