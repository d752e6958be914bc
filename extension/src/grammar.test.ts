/**
 * The TextMate grammar, run by the libraries that editors run it with (vscode-textmate and Oniguruma), against the
 * grammar of the language, its units and every sample.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, expect, test } from 'vitest';
import oniguruma from 'vscode-oniguruma';
import textmate, { type IGrammar, type StateStack } from 'vscode-textmate';
import { units } from '../../shared/src/quantity.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const read = (path: string) => readFileSync(join(root, path), 'utf8');
let grammar: IGrammar;

beforeAll(async () => {
  const wasm = createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm');
  await oniguruma.loadWASM(new Uint8Array(readFileSync(wasm)).buffer);
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => oniguruma.createOnigScanner(patterns),
      createOnigString: (text) => oniguruma.createOnigString(text),
    }),
    loadGrammar: async () =>
      textmate.parseRawGrammar(read('extension/syntaxes/pair.tmLanguage.json'), 'pair.tmLanguage.json'),
  });
  grammar = (await registry.loadGrammar('source.pair')) as IGrammar;
});

interface Token {
  readonly text: string;
  /** The innermost scope. */
  readonly scope: string;
}

function tokenise(text: string): { tokens: Token[]; end: StateStack } {
  const tokens: Token[] = [];
  let state: StateStack = textmate.INITIAL;
  for (const line of text.split(/\r?\n/)) {
    const result = grammar.tokenizeLine(line, state);
    state = result.ruleStack;
    for (const { startIndex, endIndex, scopes } of result.tokens) {
      const part = line.slice(startIndex, endIndex).trim();
      if (part) tokens.push({ text: part, scope: scopes.at(-1) ?? '' });
    }
  }
  return { tokens, end: state };
}

/** The scope of a word in a line. */
function scopeOf(word: string, line: string): string {
  return tokenise(line).tokens.find(({ text }) => text === word)?.scope ?? `${word} is no token of its own`;
}

const samples = readdirSync(join(root, 'samples'), { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.pair'))
  .map((path) => join('samples', path));

test('there are samples to colour', () => {
  expect(samples.length).toBeGreaterThan(3);
});

test.each(samples)('colours all of %s', (path) => {
  const { tokens, end } = tokenise(read(path));
  expect(tokens.filter(({ scope }) => scope === 'source.pair')).toEqual([]);
  expect(end.depth).toBe(1);
});

test('colours every keyword of the language as one', () => {
  const rules = read('language/src/fieldpair.langium').replace(/\/\*[\s\S]*?\*\/|^.*\bterminal\b.*$/gm, '');
  const keywords = new Set([...rules.matchAll(/'([a-z]+)'/g)].map(([, word]) => word as string));
  expect(keywords.size).toBeGreaterThan(50);
  const plain = [...keywords].filter((word) => !/^(keyword|storage)\./.test(scopeOf(word, `${word} {`)));
  expect(plain).toEqual([]);
});

test('colours every unit of the language as one', () => {
  const plain = [...units.keys()].filter((unit) => scopeOf(unit, `12.5 ${unit}`) !== 'keyword.other.unit.pair');
  expect(plain).toEqual([]);
});

test.each([
  ['northgate', 'store northgate "Northgate Market" {', 'entity.name.namespace.store.pair'],
  ['northgate', 'store northgate continued {', 'entity.name.namespace.store.pair'],
  ['comp1', '  node comp1 : DriveBoard', 'variable.other.node.pair'],
  ['DriveBoard', '  node comp1 : DriveBoard', 'entity.name.type.device.pair'],
  ['chillers', 'bus chillers : modbus-rtu 19200 8E1 on Pair22 {', 'entity.name.function.bus.pair'],
  ['modbus-rtu', 'bus chillers : modbus-rtu 19200 8E1 on Pair22 {', 'support.type.kind.pair'],
  ['19200', 'bus chillers : modbus-rtu 19200 8E1 on Pair22 {', 'constant.numeric.pair'],
  ['8E1', 'bus chillers : modbus-rtu 19200 8E1 on Pair22 {', 'constant.other.framing.pair'],
  ['Pair22', 'bus chillers : modbus-rtu 19200 8E1 on Pair22 {', 'entity.name.type.cable.pair'],
  ['head', '  from head.field2 terminate switch', 'variable.other.node.pair'],
  ['field2', '  from head.field2 terminate switch', 'variable.other.property.port.pair'],
  ['switch', '  from head.field2 terminate switch', 'keyword.other.pair'],
  ['38', '  38 ft to comp1 address 11', 'constant.numeric.quantity.pair'],
  ['ft', '  38 ft to comp1 address 11', 'keyword.other.unit.pair'],
  ['comp1', '  38 ft to comp1 address 11', 'variable.other.node.pair'],
  ['11', '  38 ft to comp1 address 11', 'constant.numeric.pair'],
  ['in', '  6 ft 3 in to comp1', 'keyword.other.unit.pair'],
  ['"Kühlzelle 3"', '  3.5 m to "Kühlzelle 3" : CaseBoard', 'variable.other.node.pair'],
  ['CaseBoard', '  3.5 m to "Kühlzelle 3" : CaseBoard', 'entity.name.type.device.pair'],
  ['s1', '  9 ft to splice s1', 'variable.other.splice.pair'],
  ['-', '  bias at head 560 ohm to + 560 ohm to -', 'keyword.operator.pair'],
  ['AWG', '  conductor 22 AWG stranded', 'keyword.other.unit.pair'],
  ['stranded', '  conductor 22 AWG stranded', 'constant.language.pair'],
  ['pF/ft', '  capacitance 12.5 pF/ft', 'keyword.other.unit.pair'],
  ['ShieldedPair22', 'cable ShieldedPair22 "22 AWG" {', 'entity.name.type.cable.pair'],
  ['AirProbe', 'device AirProbe "Air probe" {', 'entity.name.type.device.pair'],
  ['field', '  port field : rs485 {', 'variable.other.property.port.pair'],
  ['rs485', '  port field : rs485 {', 'support.type.kind.pair'],
  ['bacnet-mstp', '    speaks modbus-rtu, bacnet-mstp', 'support.type.kind.pair'],
  ['..', '    address dial 1..99', 'keyword.operator.range.pair'],
  ['net', '  port bench : ethernet { twin of net "bench only" }', 'variable.other.property.port.pair'],
  ['most', '    at most 10 contacts', 'keyword.other.pair'],
  ['VA', '    supplies 24 V ac limit 40 VA class 2', 'keyword.other.unit.pair'],
  ['ac', '    supplies 24 V ac limit 40 VA class 2', 'constant.language.pair'],
  ['-', '  12 ft to door1 : DoorContact breaks - bridged 4.7 kohm', 'keyword.operator.pair'],
  ['tap-too-long', 'waive tap-too-long at probe1 because "agreed"', 'support.type.rule.pair'],
  ['probe1', 'waive tap-too-long at probe1 because "agreed"', 'variable.other.node.pair'],
  ['from the head', '/// from the head', 'comment.line.documentation.pair'],
  ['from the head', '// from the head', 'comment.line.double-slash.pair'],
])('%s in: %s', (word, line, scope) => {
  expect(scopeOf(word, line)).toBe(scope);
});

test('a string without its end spoils its own line only', () => {
  const { tokens, end } = tokenise('node a "half\nnode b : CaseBoard');
  expect(end.depth).toBe(1);
  expect(tokens.at(-1)).toEqual({ text: 'CaseBoard', scope: 'entity.name.type.device.pair' });
});
