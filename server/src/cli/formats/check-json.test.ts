import { describe, expect, it } from 'vitest';
import { sampleReport } from '../testing/sample-report.js';
import { checkJson } from './check-json.js';

describe('check in JSON', () => {
  const value = JSON.parse(checkJson(sampleReport(), { colour: true, failOn: 'error', version: '0.0.0' }));

  it('names its schema and the counts', () => {
    expect(value).toMatchObject({ schema: 'fieldpair-check-1', files: 2, stores: 2, buses: 1 });
    expect(Object.keys(value)).toEqual(['schema', 'files', 'stores', 'buses', 'findings', 'waived']);
  });

  it('gives a finding with its place counted from 1, absent names as null', () => {
    expect(value.findings).toHaveLength(3);
    expect(value.findings[2]).toEqual({
      rule: 'polarity-crossed',
      severity: 'error',
      message: 'the pair is <swapped> & "crossed" at comp1: 100 %, as\u0007 measured\nby 2, 3',
      file: 'north gate/wiring.pair',
      line: 3,
      column: 18,
      endLine: 3,
      endColumn: 25,
      store: 'northgate',
      bus: 'chillers',
      at: 'comp1',
      fixes: ['Land comp1 uncrossed'],
      related: [
        { message: 'the run before it', file: 'north gate/wiring.pair', line: 3, column: 3, endLine: 3, endColumn: 8 },
      ],
    });
    expect(value.findings[0]).toMatchObject({ file: '../catalogue.pair', store: null, bus: null, at: null, fixes: [] });
  });

  it('lists what is waived apart, with the reason', () => {
    expect(value.waived).toHaveLength(1);
    expect(value.waived[0]).toMatchObject({
      rule: 'shield-unearthed',
      reason: 'agreed in change 41 by "both"',
      waivedAt: { file: 'north gate/wiring.pair', line: 1, column: 7, endLine: 1, endColumn: 16 },
    });
  });
});
