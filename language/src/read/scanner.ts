/**
 * Cuts a text into the tokens of the grammar, fast, for closed files.
 *
 * It accepts exactly what the terminals and keywords of fieldpair.langium accept (a property test compares the two)
 * and gives up on anything else, so that Langium's lexer with its recovery reads such a text.
 */
import { tokenNumbers } from '../generated/reader.js';
import { Beyond, codesOf } from './codes.js';

/** Token numbers with their places, ended by two tokens of number 0; shared, so valid until the next scan. */
export interface Tokens {
  readonly kinds: Int32Array;
  readonly starts: Int32Array;
  readonly ends: Int32Array;
  readonly count: number;
}

const numberOf = (token: string): number => {
  const found = tokenNumbers.get(token);
  if (found === undefined) throw new Error(`The grammar has no token ${token}.`);
  return found;
};
const feetAndInches = numberOf('FEET_AND_INCHES');
const framing = numberOf('FRAMING');
const decimal = numberOf('NUMBER');
const hyphenated = numberOf('HYPHENATED');
const identifier = numberOf('ID');
const quotedText = numberOf('STRING');
const range = numberOf("'..'");

interface Keyword {
  readonly spelling: string;
  readonly number: number;
}
/**
 * Keywords by a hash of their letters, which the scanner computes as it reads them: nearly all names are told from all
 * keywords by one look, without making a text of them.
 */
const slotCount = 2048;
const keywordsAt = new Array<readonly Keyword[]>(slotCount).fill([]);
const hashed = (hash: number, letter: number) => (hash * 31 + letter) & 0xffffff;

function addKeyword(keyword: Keyword): void {
  let hash = 0;
  for (let at = 0; at < keyword.spelling.length; at++) hash = hashed(hash, keyword.spelling.charCodeAt(at));
  const slot = hash % slotCount;
  keywordsAt[slot] = [...keywordsAt[slot]!, keyword];
}

const spellings = new Set<string>();
const signNumbers = new Int32Array(256);
for (const [token, number] of tokenNumbers) {
  if (!token.startsWith("'")) continue;
  const spelling = token.slice(1, -1);
  if (/^\w/.test(spelling)) {
    spellings.add(spelling);
    addKeyword({ spelling, number });
  } else if (spelling.length === 1) signNumbers[spelling.charCodeAt(0)] = number;
}

/** Words that the grammar keeps for itself; as names they are written in quotes. */
export const keywords: ReadonlySet<string> = spellings;

/** What begins with a character. */
const enum Class {
  Other,
  Space,
  Letter,
  Digit,
}
const classes = new Uint8Array(256);
for (let code = 0; code < 128; code++) {
  const character = String.fromCharCode(code);
  if (/\s/.test(character)) classes[code] = Class.Space;
  else if (/[A-Za-z_]/.test(character)) classes[code] = Class.Letter;
  else if (/\d/.test(character)) classes[code] = Class.Digit;
}
classes[Beyond.Space] = Class.Space;
classes[Beyond.LineEnd] = Class.Space;
const isWordPart = (code: number) => classes[code]! >= Class.Letter;
const isDigit = (code: number) => 48 <= code && code <= 57;
const isBlank = (code: number) => code === 32 || code === 9;

const feetPattern = /\d+[ \t]*ft[ \t]+\d+(\.\d+)?[ \t]*in\b/y;
let kinds = new Int32Array(4096);
let starts = new Int32Array(4096);
let ends = new Int32Array(4096);

function grow(): void {
  const larger = (old: Int32Array<ArrayBuffer>) => {
    const next = new Int32Array(old.length * 2);
    next.set(old);
    return next;
  };
  kinds = larger(kinds);
  starts = larger(starts);
  ends = larger(ends);
}

/** The tokens of a text, or undefined where it holds anything that is no token. */
export function scan(text: string): Tokens | undefined {
  const codes = codesOf(text);
  const { length } = text;
  let count = 0;
  let at = 0;
  while (at < length) {
    const code = codes[at]!;
    if (classes[code] === Class.Space) {
      at++;
      continue;
    }
    const end = endOfToken(text, codes, at, code);
    if (end < 0) return undefined;
    if (kind !== comment) {
      if (count + 3 > kinds.length) grow();
      kinds[count] = kind;
      starts[count] = at;
      ends[count] = end;
      count++;
    }
    at = end;
  }
  for (let end = count; end < count + 2; end++) {
    kinds[end] = 0;
    starts[end] = length;
    ends[end] = length;
  }
  return { kinds, starts, ends, count };
}

/** What {@link endOfToken} found last; to give both would make an object of every token. */
let kind = 0;
const comment = -1;

/** The end of the token that begins with a character, or -1 where none does. */
function endOfToken(text: string, codes: Uint8Array, at: number, code: number): number {
  if (classes[code] === Class.Letter) return endOfWord(codes, at);
  if (isDigit(code)) return endOfNumber(text, codes, at);
  if (code === 34) {
    kind = quotedText;
    return endOfText(codes, text.length, at);
  }
  const next = codes[at + 1]!;
  if (code === 47 && (next === 47 || next === 42)) {
    kind = comment;
    return next === 42 ? endOfBlockComment(text, at) : endOfLine(codes, text.length, at);
  }
  if (code === 46 && next === 46) {
    kind = range;
    return at + 2;
  }
  kind = signNumbers[code]!;
  return kind === 0 ? -1 : at + 1;
}

function endOfWord(codes: Uint8Array, start: number): number {
  let at = start;
  let hash = 0;
  for (let letter = codes[at]!; isWordPart(letter); letter = codes[++at]!) hash = hashed(hash, letter);
  if (codes[at]! === 45 && isWordPart(codes[at + 1]!)) {
    kind = hyphenated;
    return endOfHyphenated(codes, at);
  }
  kind = wordNumber(codes, start, at, hash);
  return at;
}

function endOfHyphenated(codes: Uint8Array, hyphen: number): number {
  let at = hyphen;
  while (codes[at]! === 45 && isWordPart(codes[at + 1]!)) {
    at += 2;
    while (isWordPart(codes[at]!)) at++;
  }
  return at;
}

/** The number of a keyword or, for any other word, that of a name. */
function wordNumber(codes: Uint8Array, start: number, end: number, hash: number): number {
  const keywords = keywordsAt[hash % slotCount]!;
  // Not one after the other by an iterator, which would be an object for every word of a text.
  for (let index = 0; index < keywords.length; index++) {
    const { spelling, number } = keywords[index]!;
    if (spelling.length === end - start && isAt(codes, start, spelling)) return number;
  }
  return identifier;
}

/** Letter by letter, which for words this short takes less than to call what compares texts. */
function isAt(codes: Uint8Array, start: number, word: string): boolean {
  for (let at = 0; at < word.length; at++) if (word.charCodeAt(at) !== codes[start + at]!) return false;
  return true;
}

const isLineEnd = (code: number) => code === 10 || code === 13;

function endOfLine(codes: Uint8Array, length: number, start: number): number {
  let at = start;
  while (at < length && !isLineEnd(codes[at]!)) at++;
  return at;
}

/** The end of a comment, or -1 when the text ends first. */
function endOfBlockComment(text: string, start: number): number {
  const end = text.indexOf('*/', start + 2);
  return end < 0 ? end : end + 2;
}

function endOfNumber(text: string, codes: Uint8Array, start: number): number {
  const end = pastDigits(codes, start + 1);
  const next = codes[end]!;
  if (isBlank(next) || next === 102) {
    const feetEnd = endOfFeet(text, codes, start, end);
    if (0 <= feetEnd) {
      kind = feetAndInches;
      return feetEnd;
    }
  } else if (end === start + 1 && isParity(next) && isFraming(codes, start)) {
    kind = framing;
    return start + 3;
  }
  kind = decimal;
  return next === 46 || next === 101 ? endOfDecimal(codes, end) : end;
}

/** The end of feet and inches whose first digits end at `digitsEnd`, or -1 where it is something else. */
function endOfFeet(text: string, codes: Uint8Array, start: number, digitsEnd: number): number {
  // Nearly all feet come without inches: whether a number follows them is soon told.
  const unit = pastBlanks(codes, digitsEnd);
  if (codes[unit]! !== 102 || !isDigit(codes[pastBlanks(codes, unit + 2)]!)) return -1;
  feetPattern.lastIndex = start;
  return feetPattern.test(text) ? feetPattern.lastIndex : -1;
}

const isParity = (code: number) => code === 69 || code === 78 || code === 79;

/** Data bits and stop bits about a parity, as in 8E1. */
function isFraming(codes: Uint8Array, at: number): boolean {
  const dataBits = codes[at]!;
  const stopBits = codes[at + 2]!;
  return (dataBits === 55 || dataBits === 56) && (stopBits === 49 || stopBits === 50) && !isWordPart(codes[at + 3]!);
}

function pastBlanks(codes: Uint8Array, from: number): number {
  let at = from;
  while (isBlank(codes[at]!)) at++;
  return at;
}

function pastDigits(codes: Uint8Array, from: number): number {
  let at = from;
  while (isDigit(codes[at]!)) at++;
  return at;
}

/** The end of a number whose whole part ends at `from`. */
function endOfDecimal(codes: Uint8Array, from: number): number {
  let at = from;
  if (codes[at]! === 46 && isDigit(codes[at + 1]!)) at = pastDigits(codes, at + 2);
  if (codes[at]! === 101) {
    const sign = codes[at + 1]!;
    const first = sign === 43 || sign === 45 ? at + 2 : at + 1;
    if (isDigit(codes[first]!)) at = pastDigits(codes, first + 1);
  }
  return at;
}

/** The end of a quoted text, or -1 when its line ends first. */
function endOfText(codes: Uint8Array, length: number, from: number): number {
  for (let at = from + 1; at < length; at++) {
    const code = codes[at]!;
    if (code === 34) return at + 1;
    if (code === 92) {
      const escaped = codes[++at]!;
      if (isLineEnd(escaped) || escaped === Beyond.LineEnd) return -1;
    } else if (isLineEnd(code)) return -1;
  }
  return -1;
}
