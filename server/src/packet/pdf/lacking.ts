/** Which characters of a packet its typeface lacks, and on which sheets they are. */
import { counted } from '@fieldpair/shared';
import type { Packet, Sheet } from '@fieldpair/shared/documents';
import { sheetName } from '../layout.js';
import { substitute, type Typeface } from './typeface.js';

/** Each character that is lacking, in the order of their code points, with the sheets that should show it. */
export function lackingOf({ sheets }: Packet, typeface: Typeface): Map<string, readonly Sheet[]> {
  const found = new Map<string, Set<Sheet>>();
  for (const sheet of sheets) {
    eachText(sheet, (text) => {
      for (const one of typeface.lackingIn(text)) {
        const known = found.get(one);
        if (known) known.add(sheet);
        else found.set(one, new Set([sheet]));
      }
    });
  }
  const inOrder = [...found].sort(([one], [other]) => one.codePointAt(0)! - other.codePointAt(0)!);
  return new Map(inOrder.map(([one, its]) => [one, [...its]]));
}

function eachText(value: unknown, tell: (text: string) => void): void {
  if (typeof value === 'string') tell(value);
  else if (Array.isArray(value)) for (let index = 0; index < value.length; index++) eachText(value[index], tell);
  else if (typeof value === 'object' && value !== null) {
    for (const key in value) eachText(value[key as keyof typeof value], tell);
  }
}

const mostNamed = 60;
const mostSheets = 12;

/** What the title sheet says of it; nothing where nothing is lacking. */
export function lackingNotice(lacking: ReturnType<typeof lackingOf>): string[] {
  if (lacking.size === 0) return [];
  const names = [...lacking.keys()].map(codePoint);
  const sheets = [...new Set([...lacking.values()].flat())].map(sheetName);
  return [
    `The typeface of this PDF lacks ${counted(lacking.size, 'character')} and has ${substitute} for each: ${some(names, mostNamed, ', ')}.`,
    `Sheets: ${some(sheets, mostSheets, '; ')}.`,
    'The HTML, XLSX, CSV and SVG files of this packet have them all. fieldpair packet --font FILE makes a PDF with a typeface that has them.',
  ];
}

/** What each other sheet says that has any of it. */
export const boxNotice = `${substitute} stands for a character that the typeface lacks; page 1 says which.`;

/** `U+51B7 (Han)`: whoever reads this cannot see the character itself. */
function codePoint(character: string): string {
  const code = (character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
  const script = scripts.find(([, pattern]) => pattern.test(character))?.[0];
  return script === undefined ? `U+${code}` : `U+${code} (${script})`;
}

const scripts = ['Han', 'Hiragana', 'Katakana', 'Hangul', 'Thai', 'Devanagari', 'Bengali', 'Tamil', 'Ethiopic'].map(
  (script) => [script, new RegExp(`\\p{Script=${script}}`, 'u')] as const,
);

const some = (names: readonly string[], most: number, between: string) =>
  names.length <= most
    ? names.join(between)
    : `${names.slice(0, most).join(between)}${between}and ${names.length - most} more`;
