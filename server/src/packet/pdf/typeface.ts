/**
 * The typeface of PDFs: DejaVu Sans Condensed, which has Latin, Greek, Cyrillic, Hebrew and Arabic letters. A character
 * that it lacks is set as a hollow box, and the packet says so once.
 */

import regular from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf';
import bold from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf';
import { create, type Font } from 'fontkit';

export type Weight = 'regular' | 'bold';

/** Read once for all packets; a document embeds only the letters that it uses. */
export const fonts: Readonly<Record<Weight, Font>> = {
  regular: create(Buffer.from(regular)) as Font,
  bold: create(Buffer.from(bold)) as Font,
};

export const substitute = '\u25af';

/** Both weights have the same letters. */
const characters: ReadonlySet<number> = new Set(fonts.regular.characterSet);

const isAscii = /^[\x20-\x7e]*$/;

/** A text with boxes in place of what the typeface lacks. */
export function settable(text: string): string {
  if (isAscii.test(text)) return text;
  return [...text.normalize('NFC')].map((one) => (characters.has(one.codePointAt(0)!) ? one : substitute)).join('');
}

/** Whether the typeface has every character of a text. */
export function hasAll(text: string): boolean {
  for (const one of new Set(text.normalize('NFC'))) if (!characters.has(one.codePointAt(0)!)) return false;
  return true;
}

const rightToLeft = /[\p{Script=Hebrew}\p{Script=Arabic}]/u;

/**
 * Words in the order in which they are set from the left: those of a stretch that is written from the right are turned
 * round; the letters of each word are turned by the typeface.
 */
export function inSettingOrder(line: string): string {
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
