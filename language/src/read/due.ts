/** What must follow a word or sign on its line, in the words of whoever writes it. */

import { allListed } from '@fieldpair/shared';
import { keywords } from './scanner.js';

export interface Due {
  /** As the subject of 'is due', with an example where one helps: `a length, such as 38 ft`. */
  readonly what: string;
  /** What a token that can follow looks like. */
  readonly accepts: RegExp;
}

/** Whether a token can be what is due; a keyword is no name. */
export const fits = ({ accepts }: Due, token: string): boolean =>
  accepts.test(token) && !(accepts === name && keywords.has(token));

/** `a length is due, such as 38 ft`. */
export function dueText(what: string): string {
  const [thing = '', example] = what.split(', such as ');
  return `${thing} is due${example === undefined ? '' : `, such as ${example}`}`;
}

const name = /^["A-Za-z_]/;
const number = /^\d/;
const quantity = /^[-\d]/;
const text = /^"/;
const landing: Due = { what: 'a landing, such as caseA1 or head.field', accepts: name };
const length: Due = { what: 'a length with its unit, such as 38 ft', accepts: quantity };
const resistance: Due = { what: 'a resistance with its unit, such as 120 ohm', accepts: quantity };
const named = (what: string): Due => ({ what: `the name of the ${what}`, accepts: name });
const one = (...words: readonly string[]): Due => ({
  what: allListed(words, 'or'),
  accepts: new RegExp(`^(${words.map((word) => word.replace('+', '\\+')).join('|')})$`),
});
const word = (what: string): Due => ({ what, accepts: name });
const conductors: Due = one('+', '-', 'shield', 'common');

const table = new Map<string, Due>([
  ['import', { what: 'the path of a file in quotes', accepts: text }],
  ...['cable', 'device', 'store', 'node', 'bus', 'network', 'port', 'indicator', 'splice'].map(
    (kind) => [kind, named(kind)] as const,
  ),
  ['from', landing],
  ['to', { what: 'the landing that the run leads to, such as caseA1', accepts: name }],
  ['tap', length],
  ['area', { what: 'the name of the area, such as "Dairy wall"', accepts: name }],
  ['.', { what: 'the name of a port', accepts: name }],
  ['on', { what: 'the name of a cable', accepts: name }],
  ['built', length],
  ['cords', length],
  ['beside', { what: 'mains', accepts: /^mains$/ }],
  ['terminate', { what: 'switch or resistor', accepts: /^(switch|resistor)$/ }],
  ['resistor', resistance],
  ['capacitor', { what: 'a capacitance with its unit, such as 1 nF', accepts: quantity }],
  ['revision', { what: 'a revision, such as B', accepts: name }],
  ['at', landing],
  ['ambient', { what: 'a temperature with its unit, such as 40 degC', accepts: quantity }],
  ['waive', word('the id of a rule, such as tap-too-long')],
  ['because', { what: 'the reason in quotes', accepts: text }],
  ['role', one('head', 'node', 'repeater')],
  ['mark', { what: 'a text in quotes', accepts: text }],
  ['conductor', { what: 'a size with its unit, such as 22 AWG', accepts: quantity }],
  ['twisted', { what: 'pairs and their number', accepts: /^pairs$/ }],
  ['pairs', { what: 'a number of pairs', accepts: number }],
  ['impedance', resistance],
  ['capacitance', { what: 'a capacitance with its unit, such as 12.5 pF/ft', accepts: quantity }],
  ['velocity', { what: 'a share of the speed of light, such as 66 %', accepts: quantity }],
  ['resistance', { what: 'a resistance per length with its unit, such as 52.5 ohm/km', accepts: quantity }],
  [
    'terminals',
    { what: '+, -, shield or common with the mark of the terminal in quotes', accepts: conductors.accepts },
  ],
  ['speaks', word('a kind of bus, such as modbus-rtu')],
  ['polarity', one('required', 'free')],
  ['load', { what: 'a share of a unit load, such as 1/8', accepts: number }],
  ['terminator', { what: 'switch or fixed, and a resistance', accepts: /^(switch|fixed)$/ }],
  ['rates', { what: 'a rate, such as 19200', accepts: number }],
  ['edge', { what: 'a time with its unit, such as 250 ns', accepts: quantity }],
  ['twin', { what: 'of and the name of a port', accepts: /^of$/ }],
  ['of', { what: 'a name', accepts: name }],
  ['..', { what: 'the highest number', accepts: number }],
  ['/', { what: 'a number or a unit', accepts: /^[\dA-Za-z]/ }],
  [',', { what: 'another entry of the list', accepts: /^["\w]/ }],
  ['earthed', { what: 'at and a landing', accepts: /^at$/ }],
  ['supplies', { what: 'a voltage with its unit, such as 24 V', accepts: quantity }],
  ['draws', { what: 'a current or a power with its unit, such as 150 mA', accepts: quantity }],
  ['carries', { what: 'a current with its unit, such as 3 A', accepts: quantity }],
  ['fuse', { what: 'a current with its unit, such as 2 A', accepts: quantity }],
  ['expects', { what: 'resistor and a resistance', accepts: /^resistor$/ }],
  ['normally', one('closed', 'open')],
  ['within', { what: 'a tolerance, such as 10 %', accepts: quantity }],
]);

/** By the word that the line begins with, where that decides what a word or sign further on means. */
const byStatement: Readonly<Record<string, Readonly<Record<string, Due | undefined>>>> = {
  role: { node: undefined },
  terminator: { switch: resistance, fixed: resistance },
  bus: { ':': word('a kind of bus, such as modbus-rtu') },
  port: { ':': word('a kind of bus, such as rs485') },
  node: { ':': named('device') },
  shield: { shield: { what: 'earthed at and a landing', accepts: /^(earthed|foil|braid|none)$/ } },
  bias: {
    bias: { what: 'at and a landing (in a port: needed, switch or fixed)', accepts: /^(at|needed|switch|fixed)$/ },
    to: one('+', '-'),
    '+': resistance,
    fixed: resistance,
  },
  address: { address: { what: 'dial, switches or software', accepts: name } },
  colours: {
    colours: { what: 'a colour for each conductor, such as + white - blue', accepts: /^[-+A-Za-z]/ },
    '+': word('a colour'),
    '-': word('a colour'),
  },
  terminals: Object.fromEntries(
    ['+', '-', 'shield', 'common'].map((role) => [role, { what: 'the mark of the terminal in quotes', accepts: text }]),
  ),
  reserved: { in: { what: 'a revision, such as A', accepts: name } },
  sample: { at: { what: 'a share of the bit, such as 87.5 %', accepts: quantity } },
  at: { at: { what: 'most and a length or a number', accepts: /^most$/ } },
};

/** What a landing is followed by means the same wherever the landing stands. */
const atLanding: Readonly<Record<string, Due>> = {
  ':': named('device'),
  address: { what: 'a number, such as 12', accepts: /^[-\d]/ },
  shield: one('through', 'open', 'floating'),
  switch: { what: 'off', accepts: /^off$/ },
  breaks: one('+', '-'),
};

/** What is missing at the end of a whole line, given as its words. */
export function dueAfterLine(words: readonly string[]): Due | undefined {
  const [first, second, ...rest] = words;
  if (first !== 'bias' || second !== 'at' || (rest.length !== 1 && rest[1] !== '.') || rest.length > 3)
    return undefined;
  return { what: 'switch or the resistance of its resistors', accepts: quantity };
}

/** What must follow `word` on a line that begins with `statement`; undefined where the line may end. */
export function dueAfter(word: string, statement: string): Due | undefined {
  const own = byStatement[statement];
  if (own && Object.hasOwn(own, word)) return own[word];
  if (/^(\d|from$|tap$|to$)/.test(statement) && Object.hasOwn(atLanding, word)) return atLanding[word];
  return table.get(word);
}
