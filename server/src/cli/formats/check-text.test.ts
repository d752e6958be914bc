import { stripVTControlCharacters } from 'node:util';
import { describe, expect, it } from 'vitest';
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
});
