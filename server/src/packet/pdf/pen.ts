/** Sets text and lines on the pages of one PDF. Lengths are points (1/72 in), y downwards from the top of the page. */
import type { BatchedDocument } from './document.js';
import { Tags } from './tags.js';
import type { Typeface, Weight } from './typeface.js';

/** The least that is read at arm's length. */
export const textSize = 10;
export const leading = 12.5;

/** After spaces and hyphens, but not between a number and its unit. */
const breaks = /(?<=[\s\u2013-])(?<!\d (?=(?:ft|in|m|ohm|kohm|Mohm|mV|V|A|%)\b))/;

export class Pen {
  readonly document: BatchedDocument;
  readonly tags: Tags;

  readonly typeface: Typeface;

  constructor(document: BatchedDocument, typeface: Typeface) {
    this.document = document;
    this.typeface = typeface;
    this.tags = new Tags(document);
    for (const { name, font } of typeface.faces) document.registerFont(name, font as never);
  }

  /** The width of one line. */
  width(text: string, size = textSize, weight: Weight = 'regular'): number {
    let width = 0;
    for (const piece of this.typeface.pieces(text, weight)) {
      width += this.document.setFace(piece.face, size).widthOfString(piece.text);
    }
    return width;
  }

  /** Lines that are at most so wide: broken at spaces, after hyphens, and inside a word that is wider than a line. */
  lines(text: string, room: number, size = textSize, weight: Weight = 'regular'): string[] {
    const lines: string[] = [];
    let line = '';
    for (const word of text.split(breaks)) {
      if (this.width((line + word).trimEnd(), size, weight) <= room) {
        line += word;
        continue;
      }
      if (line !== '') lines.push(line.trimEnd());
      line = word;
      while (room < this.width(line.trimEnd(), size, weight)) {
        const part = this.#fitting(line, room, size, weight);
        lines.push(part);
        line = line.slice(part.length);
      }
    }
    if (line.trimEnd() !== '' || lines.length === 0) lines.push(line.trimEnd());
    return lines;
  }

  /** At most one line: what does not fit is left out, with an ellipsis. */
  fitted(text: string, room: number, size = textSize, weight: Weight = 'regular'): string {
    if (this.width(text, size, weight) <= room) return text;
    return `${this.#fitting(text, room - this.width('\u2026', size, weight), size, weight).trimEnd()}\u2026`;
  }

  /** One line, `y` at its top; `x` is its start, middle or end. */
  text(text: string, x: number, y: number, options: TextOptions = {}): void {
    const { size = textSize, weight = 'regular', anchor = 'start', colour = 'black' } = options;
    if (text === '') return;
    const width = anchor === 'start' ? 0 : this.width(text, size, weight);
    let left = anchor === 'start' ? x : anchor === 'middle' ? x - width / 2 : x - width;
    const base = y + this.typeface.ascent * size;
    const show = () => {
      for (const { face, text: piece } of this.typeface.pieces(text, weight)) {
        this.document.setFace(face, size).fillColor(colour);
        this.document.text(piece, left, base, { lineBreak: false, baseline: 'alphabetic' });
        left += this.document.widthOfString(piece);
      }
    };
    // Whoever searches, copies or listens gets the letters that a box stands for.
    this.tags.content(show, this.typeface.lackingIn(text).length === 0 ? undefined : text);
  }

  line(x1: number, y1: number, x2: number, y2: number, width = 0.6): void {
    this.tags.artifact(() => this.document.lineWidth(width).moveTo(x1, y1).lineTo(x2, y2).stroke('black'));
  }

  box(x: number, y: number, width: number, height: number, options: BoxOptions = {}): void {
    const { stroke = 0.6, fill } = options;
    this.tags.artifact(() => {
      if (fill !== undefined) this.document.rect(x, y, width, height).fill(fill);
      if (0 < stroke) this.document.lineWidth(stroke).rect(x, y, width, height).stroke('black');
    });
  }

  /** The longest beginning that fits, at least one character. */
  #fitting(text: string, room: number, size: number, weight: Weight): string {
    let low = 1;
    let high = text.length;
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (this.width(text.slice(0, middle), size, weight) <= room) low = middle;
      else high = middle - 1;
    }
    // No half of a surrogate pair, and no letter without the marks on it.
    while (low < text.length && /^[\p{M}\udc00-\udfff]/u.test(text.slice(low)) && 1 < low) low--;
    if (/[\ud800-\udbff]$/.test(text.slice(0, low))) low++;
    return text.slice(0, low);
  }
}

export interface TextOptions {
  readonly size?: number;
  readonly weight?: Weight;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly colour?: string;
}

export interface BoxOptions {
  /** The width of its outline; 0 for none. */
  readonly stroke?: number;
  readonly fill?: string;
}
