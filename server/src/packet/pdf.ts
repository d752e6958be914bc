/**
 * A packet as a PDF: real text in embedded fonts, drawings as lines, an outline by bus. The same packet gives the same
 * bytes.
 */
import type { Packet, Sheet } from '@fieldpair/shared/documents';
import { sheetName } from './layout.js';
import { type ContentsLine, setBlock, setParagraph } from './pdf/blocks.js';
import { BatchedDocument } from './pdf/document.js';
import type { Face } from './pdf/face.js';
import { boxNotice, lackingNotice, lackingOf } from './pdf/lacking.js';
import { Pages } from './pdf/page.js';
import { Pen } from './pdf/pen.js';
import { Typeface } from './pdf/typeface.js';

export { readFace } from './pdf/read-face.js';

export interface PacketPdf {
  readonly bytes: Uint8Array;
  /** Characters of the packet that it shows as boxes. */
  readonly lacking: string;
}

/** @param other has what the usual typeface lacks */
export async function packetPdf(packet: Packet, other?: Face): Promise<PacketPdf> {
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
  const typeface = new Typeface(other);
  const pages = new Pages(new Pen(document, typeface), packet);
  const lacking = lackingOf(packet, typeface);
  const withBoxes = new Set([...lacking.values()].flat());
  const contents: ContentsLine[] = [];
  const outline = outlineBy(document);
  for (const [index, sheet] of packet.sheets.entries()) {
    const level = index === 0 ? 1 : 2;
    const set = () =>
      pages.pen.tags.element('Sect', () => {
        setTitle(pages, sheet, level);
        const notice = index === 0 ? lackingNotice(lacking) : withBoxes.has(sheet) ? [boxNotice] : [];
        for (const text of notice) setParagraph(pages, text, index === 0 ? { weight: 'bold' } : {});
        if (0 < notice.length) pages.y += 6;
        for (const block of sheet.blocks) setBlock(pages, block, level + 1, packet, contents);
      });
    if (!pages.join(sheet, set)) pages.start(sheet);
    document.addNamedDestination(sheet.id, 'XYZ', null, pages.y, null);
    outline(sheet);
    set();
  }
  for (const { sheet, page, right, y, element } of contents) {
    document.switchToPage(page);
    const number = String(pages.firstOf(packet.sheets[sheet]!) + 1);
    element.add(() => pages.pen.text(number, right, y, { anchor: 'end', weight: 'bold' }));
  }
  pages.furnish();
  pages.pen.tags.end();
  document.end();
  return { bytes: await bytes, lacking: [...lacking.keys()].join('') };
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
      document.outline.addItem(sheetName(sheet));
      return;
    }
    const known = sheet.bus === bus ? parent : undefined;
    const item = known ?? document.outline.addItem(sheet.bus, { expanded: true });
    item.addItem(sheet.title);
    [bus, parent] = [sheet.bus, item];
  };
}

function collected(document: BatchedDocument): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  return new Promise((resolve, reject) => {
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    document.on('end', () => resolve(Buffer.concat(chunks)));
    document.on('error', reject);
  });
}
