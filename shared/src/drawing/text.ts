/**
 * How wide text is, without a font at hand: the drawing is laid out where there is no screen.
 *
 * Widths are those of DejaVu Sans 2.37 (its `hmtx` table), the widest of the sans-serif fonts that systems commonly
 * fall back to, so that what fits here fits in any of them. Letters with accents are as wide as without; other scripts
 * get a generous width by their kind.
 */
import { graphemesOf } from '../plain-text.js';

/** Advance widths of U+0020 to U+007E in thousandths of the font's size. */
const regular = [
  318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, 636, 636, 636, 636, 636, 636, 636,
  636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632, 575, 775, 752, 295, 295, 656, 557, 863,
  748, 787, 603, 787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390, 838, 500, 500, 613, 635, 550, 635,
  615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612, 635, 635, 411, 521, 392, 634, 592, 818, 592, 592, 525, 636,
  337, 636, 838,
];
/** The same for DejaVu Sans Bold. */
const bold = [
  348, 456, 521, 838, 696, 1002, 872, 306, 457, 457, 523, 838, 380, 415, 380, 365, 696, 696, 696, 696, 696, 696, 696,
  696, 696, 696, 400, 400, 838, 838, 838, 580, 1000, 774, 762, 734, 830, 683, 683, 821, 837, 372, 372, 775, 637, 995,
  837, 850, 733, 850, 770, 720, 682, 812, 774, 1103, 771, 724, 725, 457, 365, 457, 838, 500, 500, 675, 716, 593, 716,
  678, 435, 716, 712, 343, 343, 665, 343, 1042, 712, 687, 716, 716, 493, 595, 478, 712, 652, 924, 645, 652, 582, 712,
  365, 712, 838,
];
/** Of letters that are in neither table: Greek and Cyrillic have none wider than 1.18, in bold 1.41. */
const otherLetter = { regular: 1180, bold: 1410 } as const;
/** East Asian characters and emoji fill a square and a little more. */
const wideLetter = 1350;

const wide =
  /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\p{Emoji_Presentation}\p{Extended_Pictographic}\uFF01-\uFF60]/u;
const mark = /\p{M}/u;

/** Characters that show nothing, turn the direction of writing, or may not stand in XML. */
const invisible = /[\p{Cc}\p{Cs}\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb\ufffe\uffff]/gu;
/** More than any box can show; names may be of any length. */
const longest = 300;

/** One line of text that shows everything that it holds: what is invisible becomes U+FFFD. */
export function visible(text: string): string {
  const cut = text.length <= longest ? text : `${text.slice(0, longest)}…`;
  return cut.replace(/[\t\n\r ]+/g, ' ').replace(invisible, '\uFFFD');
}

/** The width of a line in the unit of `size`, never less than it is. */
export function textWidth(text: string, size: number, isBold = false): number {
  const table = isBold ? bold : regular;
  let width = 0;
  let isPlain = true;
  for (let index = 0; index < text.length; index++) {
    const known = table[text.charCodeAt(index) - 0x20];
    if (known === undefined) {
      isPlain = false;
      break;
    }
    width += known;
  }
  return ((isPlain ? width : foreignWidth(text, isBold)) * size) / 1000;
}

function foreignWidth(text: string, isBold: boolean): number {
  const table = isBold ? bold : regular;
  let width = 0;
  for (const character of text.normalize('NFD')) {
    const known = table[character.charCodeAt(0) - 0x20];
    if (known !== undefined) width += known;
    else if (character === '…' || character === '·') width += 1000;
    else if (wide.test(character)) width += wideLetter;
    else if (!mark.test(character)) width += isBold ? otherLetter.bold : otherLetter.regular;
  }
  return width;
}

export interface Fitted {
  readonly lines: readonly string[];
  /** Something was left out, which a title has to give. */
  readonly shortened: boolean;
}

/**
 * Breaks a text into lines that are at most `width` wide: at spaces; a word that is wider than a line where it has seams
 * (`coldRoomDoor`, `case_12`), else anywhere. What does not go into `most` lines is left out, with an ellipsis at its place.
 */
export function fitted(text: string, width: number, size: number, most: number, isBold = false): Fitted {
  const shown = visible(text);
  if (textWidth(shown, size, isBold) <= width) return { lines: [shown], shortened: shown.length < text.length };
  const pieces = piecesOf(shown, width, size, isBold);
  const lines: string[] = [];
  let line = '';
  for (const [index, piece] of pieces.entries()) {
    const longer = line + piece;
    if (textWidth(longer.trimEnd(), size, isBold) <= width) {
      line = longer;
      continue;
    }
    if (lines.length === most - 1) {
      lines.push(ellipsed(line + pieces.slice(index).join(''), width, size, isBold));
      return { lines, shortened: true };
    }
    lines.push(line.trimEnd());
    line = piece.trimStart();
  }
  lines.push(line.trimEnd());
  return { lines: lines.filter((one) => one !== ''), shortened: false };
}

/** As much of a line as fits, and an ellipsis. */
function ellipsed(text: string, width: number, size: number, isBold: boolean): string {
  let kept = '';
  for (const letter of lettersOf(text)) {
    if (width < textWidth(`${kept}${letter}…`, size, isBold)) break;
    kept += letter;
  }
  return `${kept.trimEnd()}…`;
}

/** A dot between two facts stays behind the first. */
const spaces = /(?<=\s)(?!\u00b7)/;
const seams = /(?<=[_\-./])|(?<=[a-z])(?=[A-Z0-9])|(?<=[0-9])(?=[A-Za-z])/;

/** Pieces of which each fits into a line by itself. */
function piecesOf(text: string, width: number, size: number, isBold: boolean): string[] {
  const fits = (piece: string) => textWidth(piece.trimEnd(), size, isBold) <= width;
  const words = text.split(spaces).flatMap((word) => (fits(word) ? [word] : word.split(seams)));
  return words.flatMap((piece) => {
    if (fits(piece)) return [piece];
    const parts: string[] = [];
    let part = '';
    for (const letter of lettersOf(piece)) {
      if (part !== '' && width < textWidth(part + letter, size, isBold)) {
        parts.push(part);
        part = '';
      }
      part += letter;
    }
    return [...parts, part];
  });
}

const isAscii = /^[\x20-\x7e]*$/;

function lettersOf(text: string): string[] {
  return isAscii.test(text) ? [...text] : graphemesOf(text);
}
