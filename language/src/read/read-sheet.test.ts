import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSheetTree } from '../generated/reader.js';
import { example } from '../testing/example.js';
import { createReadingServices } from './langium-module.js';
import { readSheet } from './read-sheet.js';
import { sheetOf } from './recovery.js';
import { scan } from './scanner.js';

const parser = createReadingServices().parser.LangiumParser;
const byLangium = (text: string) => sheetOf(parser.parse(text), text);
const byReader = (text: string) => {
  const tokens = scan(text);
  return tokens && readSheetTree(text, tokens);
};

/** Undefined values and absent ones are alike; the sheet's own extent means nothing. */
const normal = (sheet: object) => JSON.parse(JSON.stringify({ ...sheet, start: 0, end: 0 })) as unknown;

/** The derived reader may give up, but only where Langium finds a mistake, and else gives the same tree. */
function expectSame(text: string): void {
  const fast = byReader(text);
  const slow = byLangium(text);
  if (!fast) expect(slow.problems.length).toBeGreaterThan(0);
  else expect({ sheet: normal(fast), problems: [] }).toEqual({ sheet: normal(slow.sheet), problems: slow.problems });
}

describe('readSheet', () => {
  it('reads the example by both ways alike', () => {
    expect(byReader(example)).toBeDefined();
    expectSame(example);
  });

  it.each([
    ['carriage returns', example.replace(/\n/g, '\r\n')],
    ['tabs', example.replace(/ {2}/g, '\t')],
    ['a byte-order mark', `\uFEFF${example}`],
    ['nothing', ''],
    ['only comments', '// one\n/* two */'],
  ])('reads a text with %s', (_, text) => {
    expect(byReader(text)).toBeDefined();
    expectSame(text);
  });

  it("agrees with Langium on any row of the language's words", () => {
    const tokens = example.split(/(\s+|[{}:,])/).filter((token) => token !== '');
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...tokens), { maxLength: 40 }), (parts) => expectSame(parts.join(' '))),
      { numRuns: 300 },
    );
  });

  it('agrees with Langium on damaged text', () => {
    fc.assert(
      fc.property(fc.nat(example.length), fc.nat(20), fc.string({ maxLength: 5 }), (at, drop, insert) =>
        expectSame(example.slice(0, at) + insert + example.slice(at + drop)),
      ),
      { numRuns: 300 },
    );
  });

  const line = '22 ft to caseA1 : CaseBoard address 12';
  it.each([
    '22 ft to',
    '22 ft too xx',
    '22 ft to caseA1 : CaseBoard addr',
    'tap',
    'x',
    'shield',
    'bias at',
    'from',
    '"abc',
    '$$',
  ])('keeps the other statements beside a half-typed %s', (half) => {
    const { sheet, problems } = readSheet(example.replace(line, half));
    const bus = sheet.declarations
      .flatMap((declaration) => (declaration.type === 'StoreDeclaration' ? declaration.members : []))
      .find((member) => member.type === 'BusDeclaration');
    expect(sheet.declarations).toHaveLength(3);
    expect(bus?.statements.length).toBeGreaterThanOrEqual(8);
    expect(problems.length).toBeGreaterThan(0);
  });

  it('gives up on nothing, however long the line', () => {
    const long = `store s "${'x'.repeat(3_000_000)}" {}`;
    expect(readSheet(long).problems).toEqual([]);
    expect(readSheet('}'.repeat(20_000)).problems.length).toBeGreaterThan(0);
  });
});
