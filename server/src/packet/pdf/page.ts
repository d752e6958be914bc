/** The pages of a PDF: paper, margins, what stands above and below every page, and where the next block goes. */
import { type Packet, type Sheet, shortCaution } from '@fieldpair/shared/documents';
import { leading, type Pen } from './pen.js';

const margins = { left: 36, right: 36, top: 66, bottom: 54 } as const;

/** Between two sheets on one page. */
const betweenSheets = 22;
/** With less of a page left there is no room for any sheet. */
const leastRoom = 0.12;
/** With so much a sheet for the same hands may start here and go on overleaf. */
const roomToGoOn = 0.35;

const headSize = 11;

const pageIsFull = Symbol('page is full');

/** What a sheet takes at the very least, so that most of those that do not fit need not be tried. */
const leastHeight = ({ blocks }: Sheet): number =>
  blocks.reduce((sum, block) => {
    if (block.kind === 'table') return sum + block.table.rows.length * leading;
    return block.kind === 'drawing' ? sum + block.wide.height - (block.wide.titled ?? 0) - 2 * leading : sum;
  }, 0);

/** In points: 8.5 by 11 in (ANSI/ASME Y14.1, size A), and 210 by 297 mm (ISO 216). */
const paperSizes = { letter: [612, 792], a4: [595.28, 841.89] } as const;

export class Pages {
  readonly pen: Pen;
  readonly #packet: Packet;
  /** Per page, in order: the sheets that it belongs to. */
  readonly #sheets: Sheet[][] = [];
  #isTrial = false;
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
    const forRemark = this.#packet.remark === undefined ? 0 : leading;
    return this.pen.document.page.height - margins.bottom - forRemark;
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
    return this.#sheets.findIndex((sheets) => sheets.includes(sheet));
  }

  start(sheet: Sheet): void {
    const [width, height] = paperSizes[this.#packet.paper];
    this.pen.document.addPage({ size: sheet.landscape ? [height, width] : [width, height], margin: 0 });
    this.#sheets.push([sheet]);
    this.y = margins.top;
  }

  /**
   * Goes on with a sheet below the one before it, where the two are of one bus, lie alike and all of it fits, or much of
   * one for the same hands; gives whether it does. Whoever takes a bus's pages out of the packet has no other bus on them.
   *
   * @param set sets the sheet; is tried out first, without a trace
   */
  join(sheet: Sheet, set: () => void): boolean {
    const here = this.#sheets.at(-1);
    const [first] = here ?? [];
    if (!here || !first || first.bus !== sheet.bus || first.landscape !== sheet.landscape) return false;
    if (first.kind === 'title' || this.room < this.height * leastRoom) return false;
    const above = this.y;
    this.y += betweenSheets;
    const goesOn = sheet.goesOn === true && this.height * roomToGoOn <= this.bottom - this.y;
    const isTooLong = this.room < leastHeight(sheet);
    if (!goesOn && (isTooLong || !this.#fits(set))) {
      this.y = above;
      return false;
    }
    here.push(sheet);
    this.pen.line(this.left, this.y - betweenSheets / 2, this.right, this.y - betweenSheets / 2, 1);
    return true;
  }

  #fits(set: () => void): boolean {
    const { y } = this;
    this.#isTrial = true;
    try {
      this.pen.document.unseen(set);
      return true;
    } catch (error) {
      if (error !== pageIsFull) throw error;
      return false;
    } finally {
      this.#isTrial = false;
      this.y = y;
    }
  }

  /** Goes on with the same sheet. */
  next(): void {
    if (this.#isTrial) throw pageIsFull;
    const sheet = this.#sheets.at(-1)?.at(-1);
    if (sheet) this.start(sheet);
  }

  /** Starts a new page unless there is room for so much. */
  need(height: number): void {
    if (this.room < height && margins.top < this.y) this.next();
  }

  /** Store, sheet, bus, revision, date, page n of m on every page, once all pages are there. */
  furnish(): void {
    for (const [index, sheets] of this.#sheets.entries()) {
      this.pen.document.switchToPage(index);
      this.pen.tags.artifact(() => this.#furnishPage(sheets, index + 1), 'Pagination');
    }
  }

  #furnishPage(sheets: readonly Sheet[], number: number): void {
    const { pen, left, right, width, bottom } = this;
    const { title, revision, date, remark } = this.#packet;
    const ofBus = sheets[0]?.bus;
    const names = sheets.map((sheet) => sheet.title).join(', ');
    const version = revision === undefined ? date : `revision ${revision}, ${date}`;
    const top = 27;
    this.#between(top, title, version);
    this.#between(
      top + 14,
      `${ofBus === undefined ? 'Whole store' : `Bus: ${ofBus}`}. ${names}`,
      `page ${number} of ${this.count}`,
    );
    pen.line(left, top + 30, right, top + 30, 1);

    let foot = bottom + 11;
    pen.line(left, foot, right, foot, 1);
    foot += 3;
    if (remark !== undefined) {
      pen.text(pen.fitted(remark, width, undefined, 'bold'), left, foot, { weight: 'bold' });
      foot += leading;
    }
    for (const text of pen.lines(shortCaution, width).slice(0, 2)) {
      pen.text(text, left, foot);
      foot += leading;
    }
  }

  /** A text from the left and one up to the right; what there is no room for is left out of the first. */
  #between(y: number, from: string, to: string): void {
    const { pen, left, right, width } = this;
    const shown = pen.fitted(to, width / 2, headSize, 'bold');
    pen.text(shown, right, y, { size: headSize, anchor: 'end', weight: 'bold' });
    const room = width - 14 - pen.width(shown, headSize, 'bold');
    pen.text(pen.fitted(from, room, headSize, 'bold'), left, y, { size: headSize, weight: 'bold' });
  }
}
