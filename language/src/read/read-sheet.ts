/**
 * From text to the plain tree.
 *
 * A text without syntax errors is read by the reader derived from the grammar, many times faster than Langium; any
 * other is read by Langium, whose recovery keeps what can be kept. Both give the same tree (read-sheet.test.ts).
 */
import type { LangiumCoreServices, ParseResult } from 'langium';
import { readSheetTree, type Sheet } from '../generated/reader.js';
import { plainSheet } from './from-langium.js';
import { createReadingServices } from './langium-module.js';
import { scan } from './scanner.js';
import { strayTextMessage } from './syntax-messages.js';
import type { SyntaxProblem } from './syntax-problem.js';

export interface ReadSheet {
  readonly sheet: Sheet;
  readonly problems: readonly SyntaxProblem[];
}

/** More than this is no wiring description; reading it would only make everything wait. In UTF-16 units. */
export const largestText = 16 * 1024 * 1024;

/** Reads any text; never throws. */
export function readSheet(text: string): ReadSheet {
  if (text.length > largestText) return { sheet: emptySheet, problems: [tooLarge] };
  const tokens = scan(text);
  const sheet = tokens && readSheetTree(text, tokens);
  return sheet ? { sheet, problems: [] } : readWithRecovery(text);
}

const emptySheet: Sheet = { type: 'Sheet', start: 0, end: 0, imports: [], declarations: [] };
const tooLarge: SyntaxProblem = {
  message: `This file is larger than ${largestText / 1024 / 1024} MB and is not read; split it into one file for each store.`,
  start: 0,
  end: 0,
};

let services: LangiumCoreServices | undefined;

function readWithRecovery(text: string): ReadSheet {
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
  const problems: SyntaxProblem[] = [];
  for (const { offset, length } of result.lexerErrors.slice(0, mostProblems)) {
    problems.push({
      message: strayTextMessage(text.slice(offset, offset + length)),
      start: offset,
      end: offset + length,
    });
  }
  const strayEnds = problems.map(({ end }) => end);
  for (const error of result.parserErrors.slice(0, mostProblems)) {
    const [start, end] = placeOf(error, text);
    // What follows a stray character on its line is out of place for that reason alone.
    if (strayEnds.some((stray) => stray <= start && !text.slice(stray, start).includes('\n'))) continue;
    problems.push({ message: error.message, start, end });
  }
  return problems.sort((left, right) => left.start - right.start);
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
