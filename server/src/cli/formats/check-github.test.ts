import { describe, expect, it } from 'vitest';
import { sampleReport } from '../testing/sample-report.js';
import { checkGithub } from './check-github.js';

describe('check as GitHub annotations', () => {
  const lines = checkGithub(sampleReport(), { colour: true, failOn: 'error', version: '0.0.0' }).split('\n');

  // Encoding as in "Workflow commands for GitHub Actions": percent first, then line ends; in properties also : and ,
  it('encodes what the runner decodes', () => {
    expect(lines[2]).toBe(
      '::error file=north gate/wiring.pair,line=3,endLine=3,col=18,endColumn=24,title=polarity-crossed::' +
        'the pair is <swapped> & "crossed" at comp1: 100 %25, as\u0007 measured%0Aby 2, 3',
    );
  });

  it('calls an info a notice and leaves columns out of several lines', () => {
    expect(lines[0]).toMatch(/^::notice file=\.\.\/catalogue\.pair,line=1,/);
    expect(lines[1]).toBe('::warning file=north gate/wiring.pair,line=2,endLine=3,title=mixed-cable::two cables');
  });

  it('keeps waived findings out and counts', () =>
    expect(lines.slice(3)).toEqual(['3 findings in 2 files, 1 waived.', '']));

  it('keeps a file name from posing as a property', () => {
    const report = sampleReport();
    const [first] = report.findings;
    if (!first) throw new Error('the sample has findings');
    const posing = { ...first, span: { ...first.span, file: 'a,line=9::b.pair' } };
    const [line] = checkGithub(
      { ...report, findings: [posing] },
      { colour: false, failOn: 'error', version: '0' },
    ).split('\n');
    expect(line).toMatch(/^::notice file=a%2Cline=9%3A%3Ab\.pair,line=1,/);
  });
});
