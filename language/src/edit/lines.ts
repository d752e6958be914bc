/** Lines of a text, for changes that take or add a whole statement. */
import type { Place } from '@fieldpair/shared';
import type { TextChange, TextOf } from './text-change.js';

/** The indentation of the line that an offset is in. */
export function lineOf(text: string, offset: number): { indent: string } {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  return { indent: /^[ \t]*/.exec(text.slice(start, offset))?.[0] ?? '' };
}

/** The end of the last text before an offset: where a new line can be put. */
export function statementAfter(text: string, offset: number): number {
  let at = offset;
  while (at > 0 && /\s/.test(text[at - 1] as string)) at--;
  return at;
}

/** Takes a stretch away together with the space before it; a line that holds nothing else goes as a whole. */
export function removal({ file, start, end }: Place, textOf: TextOf): TextChange {
  const text = textOf(file) ?? '';
  let first = start;
  while (first > 0 && /[ \t]/.test(text[first - 1] as string)) first--;
  const alone = first === 0 || text[first - 1] === '\n';
  const rest = /^[ \t]*(\r\n|\n|$)/.exec(text.slice(end));
  if (alone && rest) return { file, start: first, end: end + rest[0].length, text: '' };
  return { file, start: alone ? start : first, end, text: '' };
}
