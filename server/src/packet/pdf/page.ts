/** The pages of a PDF: paper, margins, what stands above and below every page, and where the next block goes. */
import { type Packet, type Sheet, shortCaution } from '@fieldpair/shared/documents';
import { sheetName } from '../layout.js';
import { leading, type Pen } from './pen.js';

const margins = { left: 36, right: 36, top: 62, bottom: 66 } as const;

/** In points: 8.5 by 11 in (ANSI/ASME Y14.1, size A), and 210 by 297 mm (ISO 216). */
const paperSizes = { letter: [612, 792], a4: [595.28, 841.89] } as const;

export class Pages {
  readonly pen: Pen;
  readonly #packet: Packet;
  /** Per page, in order: the sheet that it belongs to. */
  readonly #sheets: Sheet[] = [];
  /** Where the next block goes. */
  y = 0;

  constructor(pen: Pen, packet: Packet) {
    this.pen = pen;
    this.#packet = packet;
  }

  get left(): number {
    return margins.left;
  }

  get right(): number {
    return this.pen.document.page.width - margins.right;
  }

  get width(): number {
    return this.right - this.left;
  }

  get bottom(): number {
    return this.pen.document.page.height - margins.bottom;
  }

  /** What is left of the page. */
  get room(): number {
    return this.bottom - this.y;
  }

  /** What a whole page holds. */
  get height(): number {
    return this.bottom - margins.top;
  }

  get count(): number {
    return this.#sheets.length;
  }

  /** The page, from 0, on which a sheet starts. */
  firstOf(sheet: Sheet): number {
    return this.#sheets.indexOf(sheet);
  }

  start(sheet: Sheet): void {
    const [width, height] = paperSizes[this.#packet.paper];
    this.pen.document.addPage({ size: sheet.landscape ? [height, width] : [width, height], margin: 0 });
    this.#sheets.push(sheet);
    this.y = margins.top;
  }

  /** Goes on with the same sheet. */
  next(): void {
    const sheet = this.#sheets.at(-1);
    if (sheet) this.start(sheet);
  }

  /** Starts a new page unless there is room for so much. */
  need(height: number): void {
    if (this.room < height && margins.top < this.y) this.next();
  }

  /** Store, sheet, bus, revision, date, page n of m on every page, once all pages are there. */
  furnish(): void {
    for (const [index, sheet] of this.#sheets.entries()) {
      this.pen.document.switchToPage(index);
      this.#furnishPage(sheet, index + 1);
    }
  }

  #furnishPage(sheet: Sheet, number: number): void {
    const { pen, left, right, width, bottom } = this;
    const { title, revision, date, remark } = this.#packet;
    const half = width / 2 - 6;
    const top = 34;
    pen.text(pen.fitted(title, half, 11, 'bold'), left, top, { size: 11, weight: 'bold' });
    const name = pen.fitted(sheetName(sheet), half, 11);
    pen.text(name, right, top, { size: 11, anchor: 'end' });
    pen.line(left, top + 17, right, top + 17, 1);

    const foot = bottom + 12;
    pen.line(left, foot, right, foot, 1);
    for (const [line, text] of pen.lines(shortCaution, width).slice(0, 2).entries()) {
      pen.text(text, left, foot + 4 + line * leading);
    }
    const version = revision === undefined ? date : `revision ${revision}, ${date}`;
    const marked = remark === undefined ? version : `${version}. ${remark}`;
    const last = foot + 5 + 2 * leading;
    const weight = remark === undefined ? 'regular' : 'bold';
    pen.text(pen.fitted(marked, width - 100, undefined, weight), left, last, { weight });
    pen.text(`page ${number} of ${this.count}`, right, last, { anchor: 'end', weight: 'bold' });
  }
}
