/**
 * A packet as a PDF: real text in embedded fonts, drawings as lines, an outline by bus. The same packet gives the same
 * bytes.
 */
import type { Packet, Sheet } from '@fieldpair/shared/documents';
import { sheetName } from './layout.js';
import { type ContentsLine, setBlock } from './pdf/blocks.js';
import { BatchedDocument } from './pdf/document.js';
import { lackingOf } from './pdf/lacking.js';
import { Pages } from './pdf/page.js';
import { Pen } from './pdf/pen.js';
import { fonts, settable, substitute } from './pdf/typeface.js';

export async function packetPdf(packet: Packet): Promise<Uint8Array> {
  const document = new BatchedDocument({
    autoFirstPage: false,
    bufferPages: true,
    // No font of the library's own: they lack most letters.
    font: '',
    lang: 'en',
    displayTitle: true,
    tagged: true,
    pdfVersion: '1.7',
    info: {
      Title: `${packet.title}: installer\u2019s packet`,
      Creator: 'Fieldpair',
      Producer: 'Fieldpair',
      CreationDate: new Date(`${packet.date}T00:00:00Z`),
    },
  });
  const bytes = collected(document);
  for (const [weight, font] of Object.entries(fonts)) document.registerFont(weight, font as never);
  const pages = new Pages(new Pen(document), packet);
  const contents: ContentsLine[] = [];
  const outline = outlineBy(document);
  for (const [index, sheet] of packet.sheets.entries()) {
    const level = index === 0 ? 1 : 2;
    const set = () =>
      pages.pen.tags.element('Sect', () => {
        setTitle(pages, sheet, level);
        for (const block of sheet.blocks) setBlock(pages, block, level + 1, packet, contents);
      });
    if (!pages.join(sheet, set)) pages.start(sheet);
    document.addNamedDestination(sheet.id, 'XYZ', null, pages.y, null);
    outline(sheet);
    set();
    if (index === 0) noteSubstitutes(pages, packet);
  }
  for (const { sheet, page, right, y, element } of contents) {
    document.switchToPage(page);
    const number = String(pages.firstOf(packet.sheets[sheet]!) + 1);
    element.add(() => pages.pen.text(number, right, y, { anchor: 'end', weight: 'bold' }));
  }
  pages.furnish();
  pages.pen.tags.end();
  document.end();
  return bytes;
}

function setTitle(pages: Pages, { title, bus }: Sheet, level: number): void {
  const called = bus === undefined ? title : `${title}: ${bus}`;
  pages.pen.tags.element(`H${level}`, () => {
    for (const line of pages.pen.lines(called, pages.width, 16, 'bold').slice(0, 4)) {
      pages.pen.text(line, pages.left, pages.y, { size: 16, weight: 'bold' });
      pages.y += 20;
    }
  });
  pages.y += 3;
}

/** Sheets of one bus under the bus, in the order of the packet. */
function outlineBy(document: BatchedDocument): (sheet: Sheet) => void {
  let bus: string | undefined;
  let parent: PDFKit.PDFOutline | undefined;
  return (sheet) => {
    if (sheet.bus === undefined) {
      document.outline.addItem(settable(sheetName(sheet)));
      return;
    }
    const known = sheet.bus === bus ? parent : undefined;
    const item = known ?? document.outline.addItem(settable(sheet.bus), { expanded: true });
    item.addItem(settable(sheet.title));
    [bus, parent] = [sheet.bus, item];
  };
}

function noteSubstitutes(pages: Pages, packet: Packet): void {
  if (lackingOf(packet).size === 0) return;
  pages.need(30);
  const note = `${substitute} stands for a character that this document\u2019s typeface does not have; the HTML file of the packet shows it.`;
  for (const line of pages.pen.lines(note, pages.width)) {
    pages.pen.text(line, pages.left, pages.y);
    pages.y += 12.5;
  }
}

function collected(document: BatchedDocument): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  return new Promise((resolve, reject) => {
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    document.on('end', () => resolve(Buffer.concat(chunks)));
    document.on('error', reject);
  });
}
