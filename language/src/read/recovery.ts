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
import type { SyntaxProblem } from './syntax-problem.js';

let services: LangiumCoreServices | undefined;

/** Reads any text; never throws. */
export function readWithRecovery(text: string): ReadSheet {
  services ??= createReadingServices();
  return sheetOf(services.parser.LangiumParser.parse(text), text);
}

/** What Langium's parser gave, in our terms. */
export function sheetOf(result: ParseResult, text: string): ReadSheet {
  return { sheet: plainSheet(result.value), problems: syntaxProblems(result, text) };
}

/** A text with thousands of syntax errors is no `.pair` file; the first ones tell as much. */
const mostProblems = 100;

function syntaxProblems(result: ParseResult, text: string): SyntaxProblem[] {
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
