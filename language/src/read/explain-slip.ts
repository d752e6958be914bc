/**
 * Syntax problems as people meet them: a line that stops short is told on that line, by the word that wants more, and
 * what follows from one mistake is not told again.
 *
 * Line ends mean nothing to the grammar, so that the parser takes what it misses from the next line and stumbles there.
 * Nobody writes so, which is why the end of the line counts here, where a text has mistakes anyway.
 */
import { dueAfter, dueAfterLine, dueText, fits } from './due.js';
import { keywords } from './scanner.js';
import { fileEndsInside, shortened } from './syntax-messages.js';
import type { UnreadStretch } from './syntax-problem.js';

/** A problem as the parser or the lexer tells it. */
export interface Slip {
  readonly message: string;
  readonly start: number;
  readonly end: number;
  /** What the grammar wants here, where it wants one thing. */
  readonly missing?: string | undefined;
  /** It stands where only the beginning of a declaration could. */
  readonly isOutside: boolean;
  /** It is no token at all. */
  readonly isStray: boolean;
}

interface Token {
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

/** Keywords of a landing that the parser leaves standing where what follows them does not fit. */
const leftStanding = new Set(['address', 'terminate', 'switch', 'revision', 'shield', 'breaks']);

const declarations = new Set(['cable', 'device', 'store', 'import']);
const members = new Set(['node', 'network', 'bus', ...declarations]);

/** The problems in the order of the text, each explained, and those that follow from others left out. */
export function explainSlips(text: string, problems: readonly Slip[]): UnreadStretch[] {
  const told: UnreadStretch[] = [];
  for (const problem of problems.toSorted((left, right) => left.start - right.start)) {
    const last = told.at(-1);
    if (last && problem.start <= last.echoes.end) continue;
    // Behind a mistake the parser may take the end of a block for another one.
    if (last && problem.isOutside) continue;
    told.push(explained(text, problem));
  }
  return told;
}

function explained(text: string, problem: Slip): UnreadStretch {
  const { message, start, end, missing } = problem;
  const line = lineAround(text, start);
  const tokens = tokensOf(text, line.start, line.end);
  const echoes = { start: line.start, end: line.end };
  const at = tokens.findIndex((token) => token.end > start);
  const here = tokens[at];
  const before = tokens[at - 1];
  const statement = tokens[0]?.text ?? '';

  const above = lastTokenAbove(text, line.start);
  const wanted = above && (dueAfter(above.token.text, above.statement) ?? dueAfterLine(above.words));
  if (above && wanted && (at <= 0 || !here || fits(wanted, statement))) {
    return {
      message: lineEnds(above.token, wanted.what),
      ...spotOf(above.token),
      echoes: { start: above.lineStart, end: line.end },
    };
  }
  if (!here) return { message: message === fileEndsInside ? endsInside(text) : message, start, end, echoes };
  const standing = leftStanding.has(here.text) ? dueAfter(here.text, statement) : undefined;
  if (standing) {
    const next = tokens[at + 1];
    if (!next) return { message: lineEnds(here, standing.what), start, end, echoes };
    if (!fits(standing, next.text)) return { message: stands(next, standing.what), ...spotOf(next), echoes };
  }
  const due = before && dueAfter(before.text, statement);
  if (due && !fits(due, here.text)) return { message: stands(here, due.what), start, end, echoes };
  if (at === 0 && above && missing !== undefined && !problem.isOutside) {
    return {
      message: lineEnds(above.token, missing),
      ...spotOf(above.token),
      echoes: { start: above.lineStart, end: line.end },
    };
  }
  return { message: hinted(problem, tokens, at, text), start, end, echoes };
}

const lineEnds = ({ text }: Token, due: string) => `After '${shortened(text)}' the line ends, where ${dueText(due)}.`;
const stands = (token: Token, due: string) => `Here '${shortened(token.text)}' stands where ${dueText(due)}.`;
const spotOf = ({ start, end }: Token) => ({ start, end });

/** The message with the likely way out. */
function hinted({ message, isOutside, isStray }: Slip, tokens: readonly Token[], at: number, whole: string): string {
  const text = tokens[at]!.text;
  const [before = '', next = '', statement = ''] = [tokens[at - 1]?.text, tokens[at + 1]?.text, tokens[0]?.text];
  const here = `Here '${shortened(text)}' stands`;
  if (text === ',') {
    return /^\d/.test(before) && /^\d/.test(next)
      ? `${here}; decimals are written with a point, such as 3.5 m.`
      : `${here} where no list goes on; remove it.`;
  }
  if (isStray) return message;
  if (message === fileEndsInside) return endsInside(whole);
  if (isOutside) return outside(text, here);
  if (members.has(text))
    return `${here}, which does not belong in this block; if the block was to end before, close it with '}'.`;
  if (text.startsWith('"') && statement === 'waive') return `${here}; a reason is written after because.`;
  if (/^[78]$/.test(text) && statement === 'bus')
    return `Here '${text}${next}' stands where a character format such as 8E1, 'on' or '{' is due.`;
  const isList = /^(revision|speaks|rates|colours|reserved|network)$/.test(statement);
  if (isList && /^["\w]/.test(before) && !keywords.has(before) && /^["\w]/.test(text)) {
    return `${here} where a comma is due: several are written with ',' between them.`;
  }
  if (text === 'to' && at === 0) return `${here}; a run begins with its length, such as 38 ft to caseA1.`;
  if (keywords.has(text))
    return /begins no statement/.test(message) ? `${here}, which begins no statement of this block.` : message;
  if (!/^["A-Za-z_]/.test(text)) return message;
  const isRun = /^(\d|tap$)/.test(statement) && !tokens.slice(0, at).some((token) => token.text === 'to');
  if (isRun) return `${here} where 'to' is due: a run is written LENGTH to LANDING.`;
  if (at === 0 && next === ':')
    return `${here}, which begins no statement; a node is declared by node ${shortened(text)} : DEVICE.`;
  if (/^[A-Z]/.test(text) && before !== ':') {
    return `${here}, which begins no statement; a device is written behind ':', such as caseA1 : ${shortened(text)}.`;
  }
  return message;
}

/** With the block that was begun last and is open. */
function endsInside(text: string): string {
  const open: number[] = [];
  for (const { text: one, start } of tokensOf(text, 0, text.length)) {
    if (one === '{') open.push(start);
    else if (one === '}') open.pop();
  }
  const last = open.at(-1);
  if (last === undefined) return fileEndsInside;
  const line = lineAround(text, last);
  const [word, name] = tokensOf(text, line.start, last);
  const number = text.slice(0, last).split('\n').length;
  const block = word && name && word.end <= last ? `the block of ${word.text} ${shortened(name.text)}` : 'the block';
  return `The file ends inside ${block}, which begins on line ${number}; close it with '}'.`;
}

function outside(text: string, here: string): string {
  if (text === '}') return "This '}' closes no block; remove it.";
  if (keywords.has(text))
    return `${here} outside of a block that could hold it; import, cable, device or store begins a declaration.`;
  return `${here} where import, cable, device or store is due.`;
}

function lineAround(text: string, at: number): { readonly start: number; readonly end: number } {
  // From a negative place lastIndexOf would look at the first character.
  const start = at === 0 ? 0 : text.lastIndexOf('\n', at - 1) + 1;
  const end = text.indexOf('\n', at);
  return { start, end: end < 0 ? text.length : end };
}

/** The last token on the nearest line above that has one, with the word that its line begins with. */
function lastTokenAbove(text: string, lineStart: number) {
  for (let end = lineStart - 1; 0 <= end; ) {
    const line = lineAround(text, end);
    const tokens = tokensOf(text, line.start, line.end);
    const token = tokens.at(-1);
    if (token) {
      return { token, statement: tokens[0]!.text, words: tokens.map(({ text: one }) => one), lineStart: line.start };
    }
    end = line.start - 1;
  }
  return undefined;
}

const tokenPattern = /\/\/.*|\/\*.*?(?:\*\/|$)|"(?:\\.|[^"\\])*"?|\d+(?:\.\d+)?|[A-Za-z_]\w*(?:-\w+)*|\.\.|\S/g;

function tokensOf(text: string, start: number, end: number): Token[] {
  const tokens: Token[] = [];
  for (const { 0: found, index } of text.slice(start, end).matchAll(tokenPattern)) {
    if (found.startsWith('//') || found.startsWith('/*')) continue;
    tokens.push({ text: found, start: start + index, end: start + index + found.length });
  }
  return tokens;
}
