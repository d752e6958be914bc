import { stripVTControlCharacters } from 'node:util';
import { describe, expect, it } from 'vitest';
import { checkReport } from '../report/check-report.js';
import { sampleFindings, sampleReport } from '../testing/sample-report.js';
import { checkText } from './check-text.js';

const plain = { colour: false, failOn: 'error', version: '0.0.0' } as const;

describe('check in text', () => {
  it('shows findings by file with their lines, and the count', () => {
    expect(checkText(sampleReport(), plain)).toBe(`../catalogue.pair
  1:7  info  nobody uses it  unused-entry
    1 | cable Blue1 {
      |       ^^^^^

north gate/wiring.pair
  2:2  warning  two cables  mixed-cable
    2 | // Käse
      | ^^^^^^^

  3:18  error  the pair is <swapped> & "crossed" at comp1: 100 %, as\uFFFD measured\uFFFDby 2, 3  polarity-crossed
    3 | 30 ft to comp1 crossed
      |                ^^^^^^^
    see 3:3  the run before it
    fix Land comp1 uncrossed

1 error, 1 warning, 1 info in 2 files, 2 stores, 1 bus; 1 waived.
`);
  });

  it('says when nothing was found', () => {
    expect(checkText(sampleReport([]), plain)).toBe('Nothing found in 2 files, 2 stores, 1 bus.\n');
  });

  it('says the same in colour', () => {
    const coloured = checkText(sampleReport(), { ...plain, colour: true });
    expect(coloured).not.toBe(checkText(sampleReport(), plain));
    expect(stripVTControlCharacters(coloured)).toBe(checkText(sampleReport(), plain));
  });

  it('lets no control character of a file reach the terminal', () => {
    const findings = sampleFindings.map((finding) => ({ ...finding, message: '\x1b[31mred\x9b\u202eback' }));
    const printed = checkText(sampleReport(findings), plain);
    expect(printed).toContain('\uFFFD[31mred\uFFFD\uFFFDback');
    expect(printed.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202e]/u);
  });

  const excerptOf = (text: string, start: number, end: number) => {
    const finding = { rule: 'syntax', severity: 'error', message: 'm', related: [], fixes: () => [] } as const;
    const result = {
      files: 1,
      stores: 0,
      buses: 0,
      findings: [{ ...finding, place: { file: '/x.pair', start, end } }],
    };
    return checkText(
      checkReport(result, [], () => text, '/'),
      plain,
    ).split('\n');
  };

  it('shows the piece of a long line that a finding is about', () => {
    const text = `${'a'.repeat(5000)}WRONG${'b'.repeat(5000)}`;
    const [, , line = '', carets = ''] = excerptOf(text, 5000, 5005);
    expect(line).toBe(`    1 | …${'a'.repeat(30)}WRONG${'b'.repeat(65)}…`);
    expect(carets.indexOf('^')).toBe(line.indexOf('WRONG'));
    expect(carets).toMatch(/ \^{5}$/);
    const [, , last = ''] = excerptOf(text, 10004, 10005);
    expect(last).toBe(`    1 | …${'b'.repeat(100)}`);
  });

  it('puts carets under wide characters, and one at the end of a line', () => {
    expect(excerptOf('冷蔵 x', 3, 4)[3]).toBe('      |      ^');
    expect(excerptOf('冷蔵 x', 0, 2)[3]).toBe('      | ^^^^');
    expect(excerptOf('abc', 3, 3)[3]).toBe('      |    ^');
    expect(excerptOf('  \nabc', 1, 1)[2]).toBe('');
  });
});
