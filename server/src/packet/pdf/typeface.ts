/**
 * The typeface of PDFs: DejaVu Sans Condensed, which has Latin, Greek, Cyrillic, Hebrew and Arabic letters. A character
 * that it lacks is set as a hollow box, and the packet says so once.
 */

import regular from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf';
import bold from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf';
import { create, type Font, type GlyphRun } from 'fontkit';

export type Weight = 'regular' | 'bold';

/** Read once for all packets; a document embeds only the letters that it uses. */
export const fonts: Readonly<Record<Weight, Font>> = {
  regular: remembering(create(Buffer.from(regular)) as Font),
  bold: remembering(create(Buffer.from(bold)) as Font),
};

const mostWords = 20_000;

/**
 * A font that shapes each word once for all packets, whose words are much the same. Who sets a word scales the
 * positions in place, and so gets ones of its own.
 */
function remembering(font: Font): Font {
  const known = new Map<string, GlyphRun>();
  const layout = font.layout.bind(font);
  font.layout = (text, ...how) => {
    if (0 < how.filter(Boolean).length) return layout(text, ...how);
    let run = known.get(text);
    if (!run) {
      run = layout(text);
      if (mostWords <= known.size) known.clear();
      known.set(text, run);
    }
    return Object.create(run, { positions: { value: run.positions.map((position) => ({ ...position })) } }) as GlyphRun;
  };
  return font;
}

export const substitute = '\u25af';

/** Both weights have the same letters. */
const characters: ReadonlySet<number> = new Set(fonts.regular.characterSet);

const isAscii = /^[\x20-\x7e]*$/;

/** A text with boxes in place of what the typeface lacks. */
export function settable(text: string): string {
  if (isAscii.test(text)) return text;
  return [...text.normalize('NFC')].map((one) => (characters.has(one.codePointAt(0)!) ? one : substitute)).join('');
}

/** The characters of a text that the typeface lacks. */
export function lackingIn(text: string): string[] {
  if (isAscii.test(text)) return [];
  const lacking: string[] = [];
  for (const one of text.normalize('NFC')) if (!characters.has(one.codePointAt(0)!)) lacking.push(one);
  return lacking;
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
