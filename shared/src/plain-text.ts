/** Text from files and file names, made fit for a terminal or a page in a fixed-width font. */

/**
 * Characters that move the cursor, change colours or turn the direction of writing. A file must not be able to make a
 * terminal show something else than what it holds.
 */
const unprintable = /[\p{Cc}\u2028\u2029\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

/** One line without characters that a terminal would act on: each becomes `\uFFFD`, and a tab one space. */
export function plainLine(text: string): string {
  return text.replaceAll('\t', ' ').replace(unprintable, '\uFFFD');
}

let segmenter: Intl.Segmenter | undefined;

/** The characters of a text as people count them. */
export function graphemesOf(text: string): string[] {
  // Making one takes as long as checking ten stores, and plain texts need none.
  segmenter ??= new Intl.Segmenter('en', { granularity: 'grapheme' });
  return Array.from(segmenter.segment(text), ({ segment }) => segment);
}

const ascii = /^[\x20-\x7e]*$/;
const wide =
  /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\p{Emoji_Presentation}\uFF01-\uFF60]/u;

/** How many columns a terminal gives to a text: two to East Asian characters and emoji, none to combining marks. */
export function shownWidth(text: string): number {
  if (ascii.test(text)) return text.length;
  let width = 0;
  for (const character of graphemesOf(text)) width += wide.test(character) ? 2 : 1;
  return width;
}

/** Breaks a paragraph at spaces so that lines stay within a width; a longer word keeps a line to itself. */
export function wrapped(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter((part) => part !== '')) {
    if (line !== '' && shownWidth(line) + 1 + shownWidth(word) > width) {
      lines.push(line);
      line = word;
    } else {
      line = line === '' ? word : `${line} ${word}`;
    }
  }
  if (line !== '') lines.push(line);
  return lines;
}

/** `1 error`, `2 errors`. */
export const counted = (count: number, one: string, many = `${one}s`) => `${count} ${count === 1 ? one : many}`;

/** Rows as lines of text for a fixed-width font: columns two spaces apart, each as wide as its widest cell. */
export function tableLines(rows: readonly (readonly string[])[]): string[] {
  const widths: number[] = [];
  for (const row of rows) {
    for (const [column, cell] of row.entries()) widths[column] = Math.max(widths[column] ?? 0, shownWidth(cell));
  }
  const padded = (cell: string, column: number) => cell + ' '.repeat(widths[column]! - shownWidth(cell));
  return rows.map((row) => row.map(padded).join('  ').trimEnd());
}
