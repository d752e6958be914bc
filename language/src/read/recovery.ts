/**
 * Reading by Langium, whose recovery keeps what can be kept of a text with mistakes.
 *
 * Only `read-sheet.ts` asks for it, and only for such texts: the bundle of the command line starts Langium when it is
 * first asked.
 */
import type { LangiumCoreServices, ParseResult } from 'langium';
import { explainSlips, type Slip } from './explain-slip.js';
import { plainSheet } from './from-langium.js';
import { createReadingServices } from './langium-module.js';
import type { ReadSheet } from './read-sheet.js';
import { endOfFile, missingIn, strayTextMessage } from './syntax-messages.js';
import type { UnreadStretch } from './syntax-problem.js';

let services: LangiumCoreServices | undefined;

/** Recovering from a mistake takes as long as reading a page, so that a text of nothing else would take minutes. */
const firstStretch = 64 * 1024;

/**
 * Reads any text; never throws. Of a long text a beginning is read first, then longer ones: where one of them has more
 * mistakes than are told, what follows is not read, and a problem says so.
 */
export function readWithRecovery(text: string): ReadSheet {
  let before: Beginning | undefined;
  for (let size = firstStretch; ; size *= 4) {
    const beginning = beginningOf(text, size);
    if (!beginning.result) {
      if (before) return sheetOfBeginning(before, text);
      size = Math.floor(beginning.end / 16);
      continue;
    }
    const { result, end } = beginning;
    if (end === text.length) return sheetOf(result, text);
    if (isHopeless(result)) return sheetOfBeginning({ result, end }, text);
    before = { result, end };
  }
}

interface Beginning {
  readonly result: ParseResult;
  readonly end: number;
}

/** More is no line that somebody wrote. */
const longestLine = 1000;

/** Whole lines where they are of usual length. */
function endOfBeginning(text: string, size: number): number {
  if (text.length <= size) return text.length;
  const lineStart = text.lastIndexOf('\n', size) + 1;
  return size - lineStart <= longestLine ? lineStart : size;
}

/** What Langium makes of about so many characters. */
function beginningOf(text: string, size: number): Beginning | { readonly result: undefined; readonly end: number } {
  services ??= createReadingServices();
  const end = endOfBeginning(text, size);
  try {
    return { result: services.parser.LangiumParser.parse(text.slice(0, end)), end };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    // Its recovery calls itself at every mistake in a list, of which thousands are too many, and is left in the middle.
    services = undefined;
    return { result: undefined, end };
  }
}

function sheetOfBeginning({ result, end }: Beginning, text: string): ReadSheet {
  const { sheet, problems } = sheetOf(result, text.slice(0, end));
  return { sheet, problems: [...problems.filter(({ start }) => start < end), unreadFrom(end, text)] };
}

/** More of it means nothing than any slip could be. */
const mostStray = firstStretch / 4;

function isHopeless({ lexerErrors, parserErrors }: ParseResult): boolean {
  const stray = lexerErrors.reduce((sum, { length }) => sum + length, 0);
  return mostStray <= stray || mostProblems <= lexerErrors.length || mostProblems <= parserErrors.length;
}

/** Of a text that was not read whole nothing but its mistakes is told. */
const unreadFrom = (start: number, text: string): UnreadStretch => ({
  message: 'Nothing from here on is read, because there are too many mistakes before it; mend those first.',
  start,
  end: start,
  echoes: { start: 0, end: text.length },
});

/** What Langium's parser gave, in our terms. */
export function sheetOf(result: ParseResult, text: string): ReadSheet {
  return { sheet: plainSheet(result.value), problems: syntaxProblems(result, text) };
}

/** A text with thousands of syntax errors is no `.pair` file; the first ones tell as much. */
const mostProblems = 100;

function syntaxProblems(result: ParseResult, text: string): UnreadStretch[] {
  const slips: Slip[] = [];
  for (const { offset, length } of result.lexerErrors.slice(0, mostProblems)) {
    const message = strayTextMessage(text.slice(offset, offset + length));
    slips.push({ message, start: offset, end: offset + length, isOutside: false, isStray: true });
  }
  for (const error of result.parserErrors.slice(0, mostProblems)) {
    const [start, end] = placeOf(error, text);
    const missing = missingIn(error.message);
    slips.push({ message: error.message, start, end, missing, isOutside: missing === endOfFile, isStray: false });
  }
  return explainSlips(text, slips);
}

/** Where an error is: its token, or behind the token before it where the parser invented the missing one. */
function placeOf(error: ParseResult['parserErrors'][number], text: string): [start: number, end: number] {
  const { startOffset, endOffset } = error.token;
  if (startOffset >= 0 && endOffset !== undefined && endOffset >= 0) return [startOffset, endOffset + 1];
  const previous = 'previousToken' in error ? (error.previousToken as typeof error.token | undefined) : undefined;
  if (previous && previous.endOffset !== undefined && previous.endOffset >= 0) {
    return [previous.startOffset, previous.endOffset + 1];
  }
  return [text.trimEnd().length, text.trimEnd().length];
}
