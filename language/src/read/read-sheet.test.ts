import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSheetTree } from '../generated/reader.js';
import { createReadingServices } from './langium-module.js';
import { readSheet, sheetOf } from './read-sheet.js';
import { scan } from './scanner.js';

const parser = createReadingServices().parser.LangiumParser;
const byLangium = (text: string) => sheetOf(parser.parse(text), text);
const byReader = (text: string) => {
  const tokens = scan(text);
  return tokens && readSheetTree(text, tokens);
};
/** Undefined values and absent ones are alike. */
const normal = (value: unknown) => JSON.parse(JSON.stringify(value)) as unknown;

const example = readFileSync(process.env['DEMO'] as string, 'utf8');

function expectSame(text: string): void {
  const fast = byReader(text);
  const slow = byLangium(text);
  // The reader may give up on more than Langium reports, never read what Langium does not.
  if (fast) expect({ sheet: normal({...fast, start: 0, end: 0}), problems: [] }).toEqual({ sheet: normal({...slow.sheet, start: 0, end: 0}), problems: slow.problems });
  else expect(slow.problems.length).toBeGreaterThan(0);
}

describe('readSheet', () => {
  it('reads the example by both ways alike', () => {
    expect(byReader(example)).toBeDefined();
    expectSame(example);
  });
  it('agrees with Langium on any text made of tokens', () => {
    const tokens = example.split(/(\s+|[{}:,])/).filter((token) => token !== '');
    fc.assert(fc.property(fc.array(fc.constantFrom(...tokens), { maxLength: 40 }), (parts) => expectSame(parts.join(' '))), { numRuns: 300 });
  });
  it('agrees with Langium on damaged text', () => {
    fc.assert(
      fc.property(fc.nat(example.length), fc.nat(20), fc.string({ maxLength: 5 }), (at, drop, insert) =>
        expectSame(example.slice(0, at) + insert + example.slice(at + drop)),
      ), { numRuns: 300 },
    );
  });
  it('keeps the rest', () => {
    console.log(readSheet(example.replace('22 ft to caseA1 : CaseBoard address 12', '22 ft to')).problems,readSheet(example.replace('22 ft to caseA1 : CaseBoard address 12', '22 ft too xx')).problems, readSheet(example.replace('22 ft to caseA1 : CaseBoard address 12', '22 ft to caseA1 : CaseBoard addr')).problems);
  });
});
