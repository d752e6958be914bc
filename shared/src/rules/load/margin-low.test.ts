import { describe, expect, it } from 'vitest';
import { projectOf } from '../../../../language/src/testing/check-text.js';
import { type CheckSettings, checkStore } from '../../check.js';
import { signalOf, signalPending } from '../../figures/signal.js';
import type { BusStudy } from '../../figures/study.js';
import type { Finding } from '../../finding.js';
import { exampleOf } from '../shape/example.js';
import { loadExample } from './example.js';
import { marginLow } from './margin-low.js';

const { bad, good } = marginLow.explanation;

function check(text: string, settings: CheckSettings = {}): Finding[] {
  const [store] = projectOf({ 'test.pair': text }).storesOf('test.pair');
  return checkStore(store!, [], settings).filter(({ waived }) => !waived);
}
const rulesOf = (findings: readonly Finding[]) => findings.map(({ rule }) => rule);

describe('margin-low', () => {
  it('tells by how much, where, and what would cure it', () => {
    const [finding] = check(bad);
    expect(finding?.message).toMatch(
      /^simulated at 115\.2 kbit\/s at worst \d+ mV beyond the receiver's threshold is left at n\d+ while \w+ drives; 200 mV is wanted: at 76,800 bit\/s it would be [\d.]+ m?V$/,
    );
    expect(finding?.related.map(({ message }) => message)).toEqual([
      expect.stringMatching(/^n\d+ has least left$/),
      'while this one drives',
    ]);
  });

  it('is silent where the bus is longer, faster or more loaded than a document allows: that is the cause', () => {
    const long = loadExample({ rate: '115200', runs: ['2100 ft', '1100 ft'], capacitance: '2.2 nF' });
    expect(rulesOf(check(long))).toEqual(['rate-too-fast-for-length']);
    const loaded = bad.replaceAll('load 1/8', 'load 2');
    expect(rulesOf(check(loaded))).toContain('load-over-budget');
    expect(rulesOf(check(loaded))).not.toContain('margin-low');
  });

  it('does not wait for ends to be mended, and goes on when they are', () => {
    const open = bad.replace('address 23 terminate switch', 'address 23');
    expect(rulesOf(check(open)).sort()).toEqual(['end-unterminated', 'margin-low']);
    expect(check(open).find(({ rule }) => rule === 'margin-low')?.message).toContain(
      ', with its other findings mended,',
    );
  });

  it('sees taps of which no rule tells, because no device states its edge', () => {
    const tapped = (tap: string) =>
      exampleOf(
        [
          'from head : SiteHead terminate switch',
          '20 m to case1 : CaseBoard',
          `tap ${tap} to probe : AirProbe`,
          '20 m to case2 : CaseBoard terminate switch',
        ],
        'rs485',
      )
        .replace(': rs485 on', ': rs485 921600 on')
        .replaceAll('    edge 250 ns\n', '');
    const own: CheckSettings = { only: new Set(['margin-low', 'tap-too-long']) };
    const [finding, another] = check(tapped('25 m'), own);
    expect([finding?.rule, another]).toEqual(['margin-low', undefined]);
    expect(finding?.message).toContain('with every tap shortened to 0.3 m it would be');
    expect(check(tapped('0.5 m'), own)).toEqual([]);
  });

  it('simulates nothing where sums tell that all is well', () => {
    const asked: string[] = [];
    const signal = (study: BusStudy) => {
      asked.push(study.bus.name);
      return signalOf(study);
    };
    expect(check(loadExample(), { signal })).toEqual([]);
    expect(asked).toEqual([]);
    check(good.replace('19200', '115200'), { signal });
    expect(asked).toEqual(['cases']);
  });

  it('is silent while the simulation runs, and so is a waiver of it', () => {
    const waived = bad.replace(
      '    shield earthed',
      '    waive margin-low because "the arresters go next week"\n    shield earthed',
    );
    expect(check(bad, { signal: () => signalPending })).toEqual([]);
    expect(check(waived, { signal: () => signalPending })).toEqual([]);
    expect(check(waived)).toEqual([]);
    expect(rulesOf(check(waived.replace('115200', '19200')))).toEqual(['waiver-stale']);
  });
});
