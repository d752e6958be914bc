/**
 * Keywords that were misspelt.
 *
 * What somebody meant shows by trying: the text is read with a likely keyword in place of a word that stands where
 * the reader stops, and what lets it read on beyond the line was meant. So short words are found as surely as long
 * ones, and no name is ever taken for a keyword where it can be a name.
 */
import { busKinds, ruleIds } from '@fieldpair/shared';
import { abbreviates, editDistance, likelySlips } from '../edit-distance.js';
import { readSheetTree, stoppedAt, tokenNumbers } from '../generated/reader.js';
import type { Repair } from './repair.js';
import { keywords, type Tokens } from './scanner.js';
import { commaMessage, misspeltMessage, splitWordMessage, unquotedMessage } from './syntax-messages.js';
import { quote } from './text-value.js';

const number = tokenNumbers.get('NUMBER')!;
const hyphenated = tokenNumbers.get('HYPHENATED')!;
const quoted = tokenNumbers.get('STRING')!;
const opening = tokenNumbers.get("'{'")!;
const closing = tokenNumbers.get("'}'")!;
const isWord = /^[A-Za-z_][\w-]*$/;
const hyphenatedWords = new Set<string>([...busKinds, ...ruleIds].filter((word) => word.includes('-')));

/** What a name is due after. */
const beforeNames: ReadonlySet<string> = new Set([
  ...['cable', 'device', 'port', 'store', 'node', 'network', 'bus', 'splice', 'from', 'to', 'on', 'at', 'of', '.'],
]);

/** How many tokens may be read in search of what was meant: a tenth of a second, whatever the text. */
const mostRead = 500_000;
/** More slips in one line are no slips. */
const mostInLine = 4;

/** Some tokens in a row read as one. */
interface Trial {
  readonly index: number;
  readonly count: number;
  readonly kind: number;
  readonly steps: number;
  readonly repair: Repair;
}

/** The words of a text that cannot be read as it stands which were most likely meant otherwise. */
export const spellingRepairs = (text: string, tokens: Tokens): Repair[] => new Search(text).repairs(tokens);

class Search {
  readonly #text: string;
  #read = 0;

  constructor(text: string) {
    this.#text = text;
  }

  repairs(tokens: Tokens): Repair[] {
    const repairs: Repair[] = [];
    let rest: Tokens | undefined = { ...tokens, kinds: tokens.kinds.slice(0, tokens.count + 2) };
    while (rest && this.#read < mostRead) {
      const stop = this.#stopOf(rest);
      if (stop === undefined) break;
      const line = this.#mendLine(rest, stop);
      repairs.push(...line.repairs);
      // Behind the end of the text nothing is left to be looked at.
      if (!line.isPast && rest.count <= stop) break;
      rest = line.isPast ? line.tokens : this.#pastLine(rest, stop);
    }
    return repairs;
  }

  /** The token at which reading stops; undefined where all can be read. */
  #stopOf(tokens: Tokens): number | undefined {
    const sheet = readSheetTree(this.#text, tokens);
    const stop = stoppedAt();
    // Each trial is a copy of all tokens too.
    this.#read += tokens.count;
    return sheet ? undefined : stop;
  }

  /** Where something else is wrong in the line too, only what is sure without the rest of the line is mended in it. */
  #mendLine(tokens: Tokens, first: number) {
    const found: { repair: Repair; isSure: boolean }[] = [];
    let mended = tokens;
    let stop = first;
    while (found.length < mostInLine) {
      const best = this.#best(mended, stop);
      if (!best) break;
      found.push(best);
      mended = best.tokens;
      if (best.isPast) return { tokens: mended, repairs: found.map(({ repair }) => repair), isPast: true };
      stop = best.stop;
    }
    const sure = found.filter(({ isSure }) => isSure);
    return { tokens, repairs: sure.map(({ repair }) => repair), isPast: false };
  }

  /** What lets the text be read furthest; of what leads as far the likeliest, with the others to choose from. */
  #best(tokens: Tokens, stop: number) {
    const results = this.#trials(tokens, stop).flatMap((trial) => {
      if (mostRead < this.#read) return [];
      const changed = merged(tokens, trial);
      const next = this.#stopOf(changed) ?? Number.POSITIVE_INFINITY;
      const shortened = trial.count - 1;
      return next + shortened > stop && next > trial.index ? [{ trial, tokens: changed, stop: next }] : [];
    });
    // Of the words with which something more is read the nearest is likelier than the one that reads furthest.
    const isReadOn = ({ trial, stop }: (typeof results)[number]) => trial.index + 2 <= stop;
    results.sort(
      (left, right) =>
        Number(isReadOn(right)) - Number(isReadOn(left)) ||
        (isReadOn(left) ? left.trial.steps - right.trial.steps : 0) ||
        (left.stop === right.stop ? 0 : right.stop - left.stop) ||
        left.trial.steps - right.trial.steps,
    );
    const [best] = results;
    if (!best) return undefined;
    const { repair } = best.trial;
    const others = results.filter(
      ({ stop, trial }) =>
        trial !== best.trial &&
        stop === best.stop &&
        trial.steps === best.trial.steps &&
        trial.repair.start === repair.start,
    );
    const words = [...new Set([best, ...others].flatMap(({ trial }) => trial.repair.instead))].slice(0, 3);
    const written = this.#text.slice(repair.start, repair.end);
    const message = others.length ? misspeltMessage(written, words) : repair.message;
    return {
      ...best,
      repair: { ...repair, message, instead: words as [string, ...string[]] },
      isPast: this.#isPast(best.tokens, best.trial.index, best.stop),
      isSure: this.#isSure(best.trial, best.stop),
    };
  }

  /** Whether a line can be read to its end, whatever stands on the next. */
  #isPast(tokens: Tokens, index: number, stop: number): boolean {
    if (stop === Number.POSITIVE_INFINITY) return true;
    const lineEnd = this.#endOfLine(tokens.starts[index]!);
    if (stop < tokens.count && tokens.starts[stop]! < lineEnd) return false;
    let next = index + 1;
    while (next < tokens.count && tokens.starts[next]! < lineEnd) next++;
    return next < stop || this.#stopOf(closedBefore(tokens, next)) === undefined;
  }

  /** Whether a word is likely enough however its line goes on: one of two letters only where more is read behind it. */
  #isSure({ index, steps, repair: { start, end } }: Trial, stop: number): boolean {
    const written = this.#text.slice(start, end);
    // At the end of its line a word may not be written to its end yet.
    const isFollowed = this.#text.slice(end, this.#endOfLine(end)).trim() !== '';
    return isFollowed && steps <= likelySlips(written) && (steps === 0 || 3 < written.length || index + 2 <= stop);
  }

  /** Without the line where reading stops, so that what follows may be looked at; undefined where that does not help. */
  #pastLine(tokens: Tokens, stop: number): Tokens | undefined {
    const here = tokens.starts[Math.min(stop, tokens.count - 1)]!;
    const above = stop > 0 && this.#endOfLine(tokens.starts[stop - 1]!) <= here ? tokens.starts[stop - 1] : undefined;
    for (const at of above === undefined ? [here] : [above, here]) {
      const start = this.#text.lastIndexOf('\n', at - 1) + 1;
      const end = this.#endOfLine(at);
      const rest = without(tokens, (token) => start <= tokens.starts[token]! && tokens.starts[token]! < end);
      const next = this.#stopOf(rest);
      if (next === undefined || here < rest.starts[next]!) return rest;
    }
    return undefined;
  }

  #endOfLine(at: number): number {
    const end = this.#text.indexOf('\n', at);
    return end < 0 ? this.#text.length : end;
  }

  #trials(tokens: Tokens, stop: number): Trial[] {
    const trials: Trial[] = [];
    // What is wrong may have passed for a name, and where two tokens decide it is the second.
    for (const index of [stop, stop - 1, stop + 1, stop - 2]) {
      if (index < 0 || tokens.count <= index) continue;
      trials.push(...this.#keywordsFor(tokens, index), ...this.#namesFor(tokens, index));
    }
    return [
      ...trials,
      ...this.#decimal(tokens, stop),
      ...this.#joined(tokens, stop - 1),
      ...this.#joined(tokens, stop),
    ];
  }

  #keywordsFor(tokens: Tokens, index: number): Trial[] {
    const start = tokens.starts[index]!;
    const end = tokens.ends[index]!;
    const written = this.#text.slice(start, end);
    if (!isWord.test(written) || 40 < written.length) return [];
    const word = written.toLowerCase();
    const most = likelySlips(word);
    const trials: Trial[] = [];
    for (const keyword of keywords) {
      if (keyword === written) continue;
      const distance = editDistance(word, keyword, most);
      const steps = distance <= most ? distance : abbreviates(word, keyword) ? most + 1 : undefined;
      if (steps === undefined) continue;
      const repair: Repair = { message: misspeltMessage(written, [keyword]), start, end, instead: [keyword] };
      trials.push({ index, count: 1, kind: tokenNumbers.get(`'${keyword}'`)!, steps, repair });
    }
    return trials;
  }

  /** A keyword, or a word with a hyphen, right behind what a name is due after. */
  #namesFor(tokens: Tokens, index: number): Trial[] {
    const start = tokens.starts[index]!;
    const end = tokens.ends[index]!;
    const written = this.#text.slice(start, end);
    const isPlain = tokens.kinds[index] !== hyphenated && !keywords.has(written);
    if (index === 0 || isPlain || !isWord.test(written) || 40 < written.length) return [];
    const before = this.#text.slice(tokens.starts[index - 1], tokens.ends[index - 1]);
    // A word written twice is no name, and `splice` goes before one.
    if (written === before || written === 'splice') return [];
    // On the next line another statement may have begun.
    if (!beforeNames.has(before) || this.#endOfLine(tokens.starts[index - 1]!) < start) return [];
    const repair: Repair = { message: unquotedMessage(written), start, end, instead: [quote(written)] };
    return [{ index, count: 1, kind: quoted, steps: 2, repair }];
  }

  /** 3,5 for 3.5. */
  #decimal(tokens: Tokens, index: number): Trial[] {
    const start = tokens.starts[index]!;
    const isDecimal = /^\d,\d/.test(this.#text.slice(start - 1, start + 2)) && tokens.kinds[index - 1] === number;
    if (!isDecimal) return [];
    const repair: Repair = { message: commaMessage, start, end: start + 1, instead: ['.'] };
    return [{ index: index - 1, count: 3, kind: number, steps: 0, repair }];
  }

  /** `modbus rtu` for `modbus-rtu`. */
  #joined(tokens: Tokens, index: number): Trial[] {
    if (index < 0 || tokens.count <= index) return [];
    const start = tokens.starts[index]!;
    for (let count = 5; 1 < count; count--) {
      const last = index + count - 1;
      if (tokens.count <= last) continue;
      const end = tokens.ends[last]!;
      const word = this.#text
        .slice(start, end)
        .toLowerCase()
        .replace(/[ \t-]+/g, '-');
      if (!hyphenatedWords.has(word)) continue;
      const repair: Repair = { message: splitWordMessage(word), start, end, instead: [word] };
      return [{ index, count, kind: hyphenated, steps: 0, repair }];
    }
    return [];
  }
}

function merged({ kinds, starts, ends, count }: Tokens, trial: Trial): Tokens {
  const { index, kind } = trial;
  if (trial.count === 1) {
    const changed = kinds.slice();
    changed[index] = kind;
    return { kinds: changed, starts, ends, count };
  }
  const last = index + trial.count - 1;
  const rest = without({ kinds, starts, ends, count }, (token) => index < token && token <= last);
  rest.kinds[index] = kind;
  rest.ends[index] = ends[last]!;
  return rest;
}

function without({ kinds, starts, ends, count }: Tokens, isLeftOut: (token: number) => boolean): Tokens {
  const kept: number[] = [];
  for (let token = 0; token < count; token++) if (!isLeftOut(token)) kept.push(token);
  const size = kept.length;
  kept.push(count, count + 1);
  const pick = (from: Int32Array) => Int32Array.from(kept, (token) => from[token]!);
  return { kinds: pick(kinds), starts: pick(starts), ends: pick(ends), count: size };
}

/** The tokens before one, and the ends of all blocks that are open there. */
function closedBefore({ kinds, starts, ends }: Tokens, end: number): Tokens {
  let depth = 0;
  for (let token = 0; token < end; token++) {
    if (kinds[token] === opening) depth++;
    else if (kinds[token] === closing) depth--;
  }
  const open = Math.max(0, depth);
  const padded = (from: Int32Array, filler: number) => {
    const result = new Int32Array(end + open + 2);
    result.set(from.subarray(0, end));
    result.fill(filler, end, end + open);
    return result;
  };
  return { kinds: padded(kinds, closing), starts: padded(starts, 0), ends: padded(ends, 0), count: end + open };
}
