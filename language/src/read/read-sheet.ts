/**
 * From text to the plain tree.
 *
 * A text without syntax errors is read by the reader derived from the grammar, many times faster than Langium. In any
 * other slips are mended first (mending.ts); what is wrong beside them is read by Langium, whose recovery keeps what can
 * be kept. Both readers give the same tree (read-sheet.test.ts).
 */
import { readSheetTree, type Sheet } from '../generated/reader.js';
import { readMended } from './mending.js';
import { scan } from './scanner.js';
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
  return sheet ? { sheet, problems: [] } : readMended(text);
}

const emptySheet: Sheet = { type: 'Sheet', start: 0, end: 0, imports: [], declarations: [] };
const tooLarge: SyntaxProblem = {
  message: `This file is larger than ${largestText / 1024 / 1024} MB and is not read; split it into one file for each store.`,
  start: 0,
  end: 0,
  echoes: { start: 0, end: 0 },
};
