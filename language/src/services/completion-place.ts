/** What may stand at the cursor, told from the words in front of it: enough even in half-typed statements. */
import { type BusKind, busKinds, cableClasses, canGuideNames } from '@fieldpair/shared';

const tokenPattern =
  /\/\/[^\n\r]*|\/\*[\s\S]*?(?:\*\/|$)|"(?:\\.|[^"\\\r\n])*"?|\d+(?:\.\d+)?|[A-Za-z_]\w*(?:-\w+)*|\S/g;

/** Statements are short; what stands further in front does not decide what may follow. In UTF-16 units. */
const furthest = 2000;

export interface CompletionPlace {
  /** Where the word that is being typed starts; the cursor's place when there is none. */
  readonly start: number;
  readonly due: Due;
}

export type Due =
  | { readonly what: 'nothing' | 'area' | 'cable' | 'device' | 'node' | 'landed' | 'kind' | 'address' | 'rule' }
  /** In a comment or a text, where nothing of the language stands. */
  | { readonly what: 'prose' }
  /** Of an imported file; `quoted` where its first quote is there. */
  | { readonly what: 'path'; readonly quoted: boolean }
  | { readonly what: 'terminate' | 'resistor' | 'colours' | 'colour' | 'unit-of-network' }
  | { readonly what: 'bias'; readonly node: string }
  /** `begins` where the word begins its line: then it is mostly the shield of the bus. */
  | { readonly what: 'shield'; readonly begins: boolean }
  | { readonly what: 'format'; readonly kind: BusKind }
  | { readonly what: 'port'; readonly node: string }
  | { readonly what: 'revision'; readonly node?: string }
  | { readonly what: 'rate'; readonly kind: BusKind }
  | { readonly what: 'unit'; readonly units: readonly string[] }
  | { readonly what: 'word'; readonly words: readonly string[] };

export function completionPlace(text: string, offset: number): CompletionPlace {
  const start = offset - (/[\w-]*$/.exec(text.slice(Math.max(0, offset - 200), offset))?.[0].length ?? 0);
  const partial = text.slice(start, offset);
  // A unit may follow its number without a space, but a number itself is nobody's beginning of a name.
  if (/^\d/.test(partial)) return { start: offset, due: { what: 'nothing' } };
  // Whole lines, so that no text or comment is cut open, unless a line is longer than any that people write.
  const from = Math.max(text.lastIndexOf('\n', Math.max(0, start - furthest)) + 1, start - 2 * furthest);
  const all = text.slice(from, start).match(tokenPattern) ?? [];
  if (insideProse(all.at(-1), text, start)) {
    if (all.at(-2) !== 'import' || !all.at(-1)?.startsWith('"')) return { start, due: { what: 'prose' } };
    return { start: text.lastIndexOf('"', offset - 1) + 1, due: { what: 'path', quoted: true } };
  }
  if (all.at(-1) === 'shield' && isInBus(all)) {
    return { start, due: { what: 'shield', begins: /(?:^|[\n{])[ \t]*shield\s*$/.test(text.slice(from, start)) } };
  }
  return { start, due: dueAfter(all.filter((token) => !token.startsWith('//') && !token.startsWith('/*'))) };
}

/** Whether the last token is a comment or a text that the cursor is still in. */
function insideProse(last: string | undefined, text: string, start: number): boolean {
  if (last?.startsWith('//')) return !/[\n\r]/.test(text.slice(text.lastIndexOf('//', start), start));
  if (last?.startsWith('/*')) return !last.endsWith('*/');
  return last?.startsWith('"') === true && (last.length === 1 || !last.endsWith('"'));
}

function dueAfter(tokens: readonly string[]): Due {
  const [last = '', second = '', third = ''] = [tokens.at(-1), tokens.at(-2), tokens.at(-3)];
  if (last === '.') return /^["A-Za-z_]/.test(second) ? { what: 'port', node: second } : { what: 'nothing' };
  switch (last) {
    case 'to':
      // `560 ohm to + …` gives the two resistors of a bias, not a landing; its signs are keywords.
      return { what: 'node' };
    case 'from':
      return { what: 'node' };
    case 'import':
      return { what: 'path', quoted: false };
    case 'terminate':
      return { what: 'terminate' };
    case 'resistor':
      return second === 'terminate' ? { what: 'resistor' } : { what: 'nothing' };
    case 'colours':
      return { what: 'colours' };
    case '+':
    case '-':
      return tokens.slice(-5).includes('colours') ? { what: 'colour' } : { what: 'nothing' };
    case 'area':
      return { what: 'area' };
    case 'at':
      return { what: 'landed' };
    case 'on':
      return { what: 'cable' };
    case 'speaks':
      return { what: 'kind' };
    case 'waive':
      return { what: 'rule' };
    case 'address':
      return { what: 'address' };
    case 'role':
      return { what: 'word', words: ['head', 'node', 'repeater'] };
    case 'polarity':
      return { what: 'word', words: ['required', 'free'] };
    case 'class':
      // A supply has a class too, which is a number.
      return tokens.slice(-8).includes('supplies') ? { what: 'nothing' } : { what: 'word', words: cableClasses };
    case 'guide':
      return { what: 'word', words: canGuideNames };
    case 'of':
      return tokens.slice(-5).includes('cords') ? { what: 'cable' } : { what: 'nothing' };
    case 'reads':
      return { what: 'word', words: ['normal', 'alarm', 'fault'] };
    case ':': {
      const declares = /^"/.test(second) ? tokens.at(-4) : third;
      return { what: declares === 'bus' || declares === 'port' ? 'kind' : 'device' };
    }
    case 'revision': {
      const node = nodeBefore(tokens);
      return node === undefined ? { what: 'revision' } : { what: 'revision', node };
    }
    case '{':
      return isNetwork(tokens) ? { what: 'unit-of-network' } : { what: 'nothing' };
    case ',':
      if (isNetwork(tokens)) return { what: 'unit-of-network' };
      return /^[a-z]/.test(second) && statementOf(tokens) === 'speaks' ? { what: 'kind' } : { what: 'nothing' };
    default:
      break;
  }
  if (second === 'at' && third === 'bias') return { what: 'bias', node: last };
  if (second === '.' && tokens.at(-4) === 'at' && tokens.at(-5) === 'bias') return { what: 'bias', node: third };
  const kind = busKinds.find((one) => one === last);
  if (kind && second === ':' && declaresBus(tokens)) return { what: 'rate', kind };
  const rated = busKinds.find((one) => one === second);
  if (rated && startStop.has(rated) && /^\d/.test(last) && declaresBus(tokens.slice(0, -1)))
    return { what: 'format', kind: rated };
  if (/^\d/.test(last)) return unitsAfter(tokens);
  if (/^\d/.test(second) && (third === 'supplies' || third === 'draws')) return { what: 'word', words: ['dc', 'ac'] };
  return { what: 'nothing' };
}

/** Whether a bus is what the cursor is in, as far as the words in front tell: a cable and a port have a shield too. */
function isInBus(tokens: readonly string[]): boolean {
  const word = tokens.findLast((token) =>
    /^(?:cable|conductor|twisted|port|terminals|from|to|bus|colours)$/.test(token),
  );
  return word === 'from' || word === 'to' || word === 'bus';
}

/** Kinds whose characters have a format; their rates are written without a unit. */
const startStop: ReadonlySet<BusKind> = new Set(['rs485', 'modbus-rtu', 'bacnet-mstp']);

/** Whether the brace that is open in front of the cursor is that of `network NAME "LABEL" {`. */
function isNetwork(tokens: readonly string[]): boolean {
  const brace = tokens.findLastIndex((token) => token === '{' || token === '}');
  if (tokens[brace] !== '{') return false;
  return tokens[brace - 2] === 'network' || tokens[brace - 3] === 'network';
}

/** Whether the colon in front of the last word is that of `bus NAME "LABEL" :`. */
const declaresBus = (tokens: readonly string[]): boolean =>
  tokens.at(-4) === 'bus' || (tokens.at(-5) === 'bus' && tokens.at(-3)?.startsWith('"') === true);

/** The node whose landing or declaration the cursor is in. */
function nodeBefore(tokens: readonly string[]): string | undefined {
  for (let at = tokens.length - 1; at > 0; at--) {
    const token = tokens[at - 1] as string;
    if (token === 'node' || token === 'from' || token === 'to') return tokens[at];
    if (token === '{' || token === '}') return undefined;
  }
  return undefined;
}

const lengths = ['ft', 'm', 'in'];
const unitsByWord: ReadonlyMap<string, readonly string[]> = new Map([
  ['conductor', ['AWG', 'mm2']],
  ['impedance', ['ohm']],
  ['capacitance', ['pF/ft', 'pF/m', 'nF/km', 'pF']],
  ['velocity', ['%']],
  ['resistance', ['ohm/km', 'ohm/kft', 'ohm/m', 'kohm', 'ohm']],
  ['resistor', ['ohm', 'kohm']],
  ['terminator', ['ohm']],
  ['bias', ['ohm', 'kohm']],
  ['capacitor', ['nF', 'uF', 'pF']],
  ['source', ['V']],
  ['rates', ['bit/s', 'kbit/s']],
  ['edge', ['ns', 'us']],
  ['delay', ['ns', 'us']],
  ['sample', ['%']],
  ['cords', lengths],
  ['ambient', ['degC', 'degF']],
  ['built', lengths],
  ['carries', ['A', 'mA']],
  ['fuse', ['A', 'mA']],
  ['supplies', ['V']],
  ['within', ['%']],
  ['limit', ['A', 'VA', 'W', 'mA']],
  ['draws', ['A', 'mA', 'W', 'VA']],
  ['reads', ['kohm', 'ohm']],
  ['bridged', ['kohm', 'ohm']],
  ['most', ['ohm', 'kohm']],
]);
const withoutUnit = new Set(['address', 'class', 'load', 'pairs', 'kind', 'bus', 'network']);

function unitsAfter(tokens: readonly string[]): Due {
  const word = statementOf(tokens);
  if (word === 'bus' && ['can', 'ethernet'].includes(tokens.at(-2) ?? ''))
    return { what: 'unit', units: ['kbit/s', 'Mbit/s', 'bit/s'] };
  if (word !== undefined && withoutUnit.has(word)) return { what: 'nothing' };
  return { what: 'unit', units: (word === undefined ? undefined : unitsByWord.get(word)) ?? lengths };
}

/** The nearest word in front that says what a value is of; undefined where a run starts with its length. */
function statementOf(tokens: readonly string[]): string | undefined {
  const before = tokens.at(-2);
  if (before === '.' || before === '/') return 'load';
  // Bounds are of what their statement measures: a resistance that is read, or the voltage of a load.
  if (before === 'above' || before === 'below') {
    return tokens.findLast((token) => token === 'reads' || token === 'draws') === 'reads' ? 'reads' : 'supplies';
  }
  if (before === 'through') return tokens.at(-3) === 'shield' ? undefined : 'bridged';
  for (let at = tokens.length - 2; at >= 0 && tokens.length - at < 14; at--) {
    const token = tokens[at] as string;
    if (unitsByWord.has(token) || withoutUnit.has(token) || token === 'speaks') {
      // A word whose value is complete is the end of its statement, and a length begins the next one.
      const value = tokens.slice(at + 1, -1);
      const ended = value.some((one) => /^\d/.test(one)) && token !== 'bias' && token !== 'rates' && token !== 'bus';
      return ended || (token === 'bus' && value.includes('{')) ? undefined : token;
    }
    if (token === '{' || token === '}') return undefined;
  }
  return undefined;
}
