/**
 * Reading a text with slips as though they were mended, so that nothing else in it is lost: each slip is told with what
 * was most likely meant, and whatever is wrong beside them is read by Langium.
 */
import { readSheetTree } from '../generated/reader.js';
import type { ReadSheet } from './read-sheet.js';
import { readWithRecovery } from './recovery.js';
import { type Back, type Repair, repaired } from './repair.js';
import { scan } from './scanner.js';
import { signRepairs } from './signs.js';
import { spellingRepairs } from './spelling.js';
import type { SyntaxProblem } from './syntax-problem.js';

/** Reads any text that has a mistake; never throws. */
export function readMended(text: string): ReadSheet {
  const repairs = repairsOf(text);
  if (!repairs.length) return readWithRecovery(text);
  const { text: mended, back } = repaired(text, repairs);
  const tokens = scan(mended);
  const sheet = tokens && readSheetTree(mended, tokens);
  const read = sheet ? { sheet, problems: [] } : readWithRecovery(mended);
  const problems = [...repairs.map(problemOf), ...read.problems.map((problem) => placedBack(problem, back))];
  return { sheet: placedBack(read.sheet, back), problems: problems.sort((left, right) => left.start - right.start) };
}

function repairsOf(text: string): Repair[] {
  const signs = signRepairs(text);
  if (!signs) return [];
  const { text: known, back } = repaired(text, [...signs.repairs, ...signs.strays.map(blank)]);
  const tokens = scan(known);
  const words = tokens ? spellingRepairs(known, tokens) : [];
  return [
    ...signs.repairs,
    ...words.map((repair) => ({ ...repair, start: back(repair.start, false), end: back(repair.end, true) })),
  ].sort((left, right) => left.start - right.start);
}

/** What means nothing is left out while words are looked at. */
const blank = ({ start, end }: { start: number; end: number }): Repair => ({ message: '', start, end, instead: [' '] });

const problemOf = ({ message, start, end, instead }: Repair): SyntaxProblem => ({ message, start, end, instead });

/** The same with all its places in the text as it is. */
function placedBack<Value>(value: Value, back: Back): Value {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map((one) => placedBack(one, back)) as Value;
  const result: Record<string, unknown> = {};
  for (const [name, one] of Object.entries(value)) {
    if (typeof one === 'number' && (name === 'start' || name === 'end')) result[name] = back(one, name === 'end');
    else result[name] = placedBack(one, back);
  }
  return result as Value;
}
