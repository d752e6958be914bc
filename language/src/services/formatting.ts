/** Formatting: only the stretch that the formatter changes is sent, so that cursors and folds elsewhere stay. */
import type { Range, TextEdit } from 'vscode-languageserver';
import { formatText } from '../format/format.js';
import type { Desk } from './desk.js';

export function formatting(desk: Desk, file: string): TextEdit[] {
  const text = desk.project.textOf(file);
  if (text === undefined) return [];
  const formatted = formatText(text);
  if (formatted === text) return [];
  let start = 0;
  const shorter = Math.min(text.length, formatted.length);
  while (start < shorter && text[start] === formatted[start]) start++;
  let tail = 0;
  while (tail < shorter - start && text[text.length - 1 - tail] === formatted[formatted.length - 1 - tail]) tail++;
  const range = desk.rangeOf({ file, start, end: text.length - tail });
  return [{ range, newText: formatted.slice(start, formatted.length - tail) }];
}

/** Formats whole lines: where the formatter adds or takes none in front of them, each keeps its number. */
export function rangeFormatting(desk: Desk, file: string, { start, end }: Range): TextEdit[] {
  const text = desk.project.textOf(file);
  if (text === undefined) return [];
  const before = linesOf(text);
  const after = linesOf(formatText(text));
  const edits: TextEdit[] = [];
  let line = 0;
  for (const newText of after) {
    // The formatter only takes blank lines away; the words of the others stay on their lines.
    while (line < before.length && isBlank(before[line]) && !isBlank(newText)) line++;
    const old = before[line];
    if (old === undefined) break;
    if (start.line <= line && line <= end.line && old !== newText && words(old) === words(newText)) {
      edits.push({ range: { start: { line, character: 0 }, end: { line, character: old.length } }, newText });
    }
    line++;
  }
  return edits;
}

const linesOf = (text: string) => text.split(/\r\n|\n|\r/);
const isBlank = (line: string | undefined) => line !== undefined && line.trim() === '';
const words = (line: string) => line.replaceAll(/\s+/g, '');
