/** Signs that are in use elsewhere, and what is written here instead. */

import type { Repair } from './repair.js';
import { strayTextMessage, unquotedMessage } from './syntax-messages.js';
import { quote } from './text-value.js';

/** Comments, texts and tokens; what they leave is the stray signs. */
const known =
  /\s+|\/\*[\s\S]*?\*\/|\/\/[^\n\r]*|"(?:\\.|[^"\\\r\n])*"|[A-Za-z_]\w*(?:-\w+)*|\d+(?:\.\d+)?(?:e[+-]?\d+)?|\.\.|(?!\/\*)[-+%,./:{}]/y;

/** Greek letters and the signs made of them are different characters that look alike. */
const unitSigns: readonly (readonly [RegExp, string])[] = [
  [/[\u03a9\u2126]/y, 'ohm'],
  [/k[\u03a9\u2126]/y, 'kohm'],
  [/M[\u03a9\u2126]/y, 'Mohm'],
  [/[\u00b5\u03bc]F/y, 'uF'],
  [/[\u00b5\u03bc]s/y, 'us'],
  [/° ?C|\u2103/y, 'degC'],
  [/° ?F|\u2109/y, 'degF'],
  [/mm²/y, 'mm2'],
];
/** After a number: feet and inches, feet, inches. */
const primes = /['’′][ \t]*(\d+(?:\.\d+)?)[ \t]*(?:["”″]|'')|['’′]|["”″]/y;

/** More than this is no plan with a few foreign signs in it. */
const most = 50;

interface Stray {
  readonly start: number;
  readonly end: number;
}

/** What has a beginning alone reaches to the end of its line, or of the text. */
function endOfStray(text: string, at: number): number {
  if (text.startsWith('/*', at)) return text.length;
  if (text[at] !== '"') return at + 1;
  const end = text.indexOf('\n', at);
  return end < 0 ? text.length : end;
}

/** What is to be done about stray signs, and those for which nothing is known; undefined where there are too many. */
export function signRepairs(text: string): { repairs: Repair[]; strays: Stray[] } | undefined {
  const repairs: Repair[] = [];
  const strays: Stray[] = [];
  let at = 0;
  while (at < text.length) {
    known.lastIndex = at;
    const token = known.exec(text)?.[0];
    const repair = token === undefined ? strayRepair(text, at) : wordRepair(text, at, token);
    if (repair) {
      repairs.push(repair);
      at = repair.end;
    } else {
      const end = token === undefined ? endOfStray(text, at) : at + token.length;
      if (token === undefined) strays.push({ start: at, end });
      at = end;
    }
    if (most < repairs.length + strays.length) return undefined;
  }
  return { repairs, strays };
}

/** A unit may begin with letters and end with a sign, and a name may have letters of any alphabet in it. */
function wordRepair(text: string, at: number, token: string): Repair | undefined {
  if (!/^[A-Za-z_]/.test(token)) return undefined;
  const unit = token.length <= 2 && /^[kMm]/.test(token) ? unitRepair(text, at) : undefined;
  return unit ?? nameRepair(text, at);
}

/** A word with other letters than A to Z, which is a name once it stands in quotes. */
function nameRepair(text: string, start: number): Repair | undefined {
  const words = /[\p{L}_][\p{L}\p{M}\p{N}_]*(?:-[\p{L}\p{M}\p{N}_]+)*/uy;
  words.lastIndex = start;
  const word = words.exec(text)?.[0];
  // Behind a number it would be a unit.
  if (/[\p{L}\p{M}\p{N}_]/u.test(text[start - 1] ?? '')) return undefined;
  if (word === undefined || !/[^\w-]/.test(word) || /\d[ \t]*$/.test(text.slice(Math.max(0, start - 8), start)))
    return undefined;
  return { message: unquotedMessage(word), start, end: start + word.length, instead: [quote(word)] };
}

function strayRepair(text: string, at: number): Repair | undefined {
  const unit = unitRepair(text, at);
  if (unit) return unit;
  const sign = text[at]!;
  const message = strayTextMessage(sign);
  const end = at + 1;
  const numberBefore = /\d[ \t]*$/.test(text.slice(Math.max(0, at - 8), at));
  primes.lastIndex = at;
  const prime = numberBefore ? primes.exec(text) : null;
  if (prime) {
    const { 0: signs, 1: inches } = prime;
    const feet = /["”″]/.test(signs) ? 'in' : 'ft';
    const unit = inches === undefined ? feet : `ft ${inches} in`;
    const instead = `${/\d/.test(text[at - 1]!) ? ' ' : ''}${unit}`;
    return { message: strayTextMessage("'"), start: at, end: at + signs.length, instead: [instead] };
  }
  if (sign === '#' && /^[ \t]*$/.test(text.slice(text.lastIndexOf('\n', at - 1) + 1, at))) {
    return { message, start: at, end, instead: ['//'] };
  }
  if (sign === ';' || sign === '=') return { message, start: at, end, instead: [''] };
  const texts = /[“”„]([^"“”„\r\n]*)[“”]/y;
  texts.lastIndex = at;
  const quoted = texts.exec(text);
  if (quoted) {
    const message = `'${sign}' begins no text; texts stand between straight quotes, such as "Dairy wall".`;
    return { message, start: at, end: at + quoted[0].length, instead: [`"${quoted[1]}"`] };
  }
  const name = nameRepair(text, at);
  if (name) return name;
  if (/[−–]/.test(sign)) return { message: `'${sign}' means nothing here; write -.`, start: at, end, instead: ['-'] };
  return undefined;
}

function unitRepair(text: string, start: number): Repair | undefined {
  for (const [pattern, unit] of unitSigns) {
    pattern.lastIndex = start;
    const sign = pattern.exec(text)?.[0];
    if (sign === undefined) continue;
    const end = start + sign.length;
    // 'ohm' before letters would be another word.
    if (/\w/.test(text[end] ?? '')) return undefined;
    const instead = `${/\d/.test(text[start - 1] ?? '') ? ' ' : ''}${unit}`;
    return { message: `'${sign}' means nothing here; this unit is written ${unit}.`, start, end, instead: [instead] };
  }
  return undefined;
}
