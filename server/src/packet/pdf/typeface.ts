/**
 * The typeface of PDFs: DejaVu Sans Condensed, which has Latin, Greek, Cyrillic, Hebrew and Arabic letters, and, for what
 * it lacks, one that the user names. What neither has is set as a hollow box, and the packet says where.
 */
import regular from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf';
import bold from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf';
import { create, type Font } from 'fontkit';
import { Face } from './face.js';

export type Weight = 'regular' | 'bold';

/** Read once for all packets; a document embeds only the letters that it uses. */
const own: Readonly<Record<Weight, Face>> = {
  regular: new Face('regular', create(Buffer.from(regular)) as Font),
  bold: new Face('bold', create(Buffer.from(bold)) as Font),
};

export const substitute = '\u25af';

const isAscii = /^[\x20-\x7e]*$/;

/** A piece of a line that one font has. */
export interface Piece {
  readonly face: Face;
  readonly text: string;
}

export class Typeface {
  readonly faces: readonly Face[];
  readonly #other: Face | undefined;

  /** @param other for what the usual one lacks */
  constructor(other?: Face) {
    this.#other = other;
    this.faces = other ? [own.regular, own.bold, other] : [own.regular, own.bold];
  }

  /** Of the letters above their base line, as a share of their size. */
  get ascent(): number {
    return own.regular.ascent;
  }

  /** A line in the order in which it is set, with boxes in place of what no font has. */
  pieces(line: string, weight: Weight): Piece[] {
    const face = own[weight];
    if (isAscii.test(line)) return [{ face, text: line }];
    const pieces: { face: Face; text: string }[] = [];
    for (const one of inSettingOrder(line.normalize('NFC'))) {
      const its = this.#faceOf(one, weight);
      const last = pieces.at(-1);
      if (last?.face === (its ?? face)) last.text += its ? one : substitute;
      else pieces.push({ face: its ?? face, text: its ? one : substitute });
    }
    return pieces;
  }

  /** The characters of a text that no font has. */
  lackingIn(text: string): string[] {
    if (isAscii.test(text)) return [];
    return [...text.normalize('NFC')].filter((one) => !this.#faceOf(one, 'regular') || !this.#faceOf(one, 'bold'));
  }

  #faceOf(character: string, weight: Weight): Face | undefined {
    return [own[weight], this.#other].find((face) => face?.has(character));
  }
}

const rightToLeft = /[\p{Script=Hebrew}\p{Script=Arabic}]/u;

/**
 * Words in the order in which they are set from the left: those of a stretch that is written from the right are turned
 * round; the letters of each word are turned by the font.
 */
function inSettingOrder(line: string): string {
  if (!rightToLeft.test(line)) return line;
  const ordered: string[] = [];
  let stretch: string[] = [];
  for (const word of line.split(' ')) {
    if (rightToLeft.test(word)) stretch.unshift(word);
    else {
      ordered.push(...stretch, word);
      stretch = [];
    }
  }
  return [...ordered, ...stretch].join(' ');
}
