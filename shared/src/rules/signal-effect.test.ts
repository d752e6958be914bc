import { describe, expect, it } from 'vitest';
import { checkText } from '../../../language/src/testing/check-text.js';
import type { Finding } from '../finding.js';
import { exampleOf } from './shape/example.js';

const bus = (rate: string, statements: readonly string[]) =>
  exampleOf(statements, 'rs485')
    .replace(': rs485 on', `: rs485 ${rate} on`)
    .replaceAll('    edge 250 ns\n', '    edge 30 ns\n');
const simulated = ({ related }: Finding) =>
  related.map(({ message }) => message).filter((one) => one.startsWith('simulated'));

const ends = (rate: string, far: string) =>
  bus(rate, ['from head : SiteHead terminate switch', '40 m to case1 : CaseBoard', `60 m to case2 : CaseBoard${far}`]);

describe('what a fault does to the signal', () => {
  it('is told of a missing terminator: by how much, and what the right one gives', () => {
    const [finding] = checkText(ends('921600', ''), ['end-unterminated']);
    expect(simulated(finding!)).toEqual([
      expect.stringMatching(
        /^simulated: at worst .* here .*while \w+ drives, and 200 mV is wanted; with both ends terminated as is due it would be [\d.]+ m?V$/,
      ),
    ]);
    const [harmless] = checkText(ends('9600', ''), ['end-unterminated']);
    expect(simulated(harmless!)[0]).toMatch(/ and 200 mV is enough: it is not felt at 9,600 bit\/s$/);
  });

  it('is told of terminators that are wrong, midline or too many', () => {
    for (const [far, rule] of [
      [' terminate resistor 30 ohm', 'terminator-value'],
      [' terminate resistor 120 ohm terminate resistor 120 ohm', 'terminator-extra'],
    ] as const) {
      const [finding] = checkText(ends('9600', far), [rule]);
      expect(simulated(finding!), rule).toHaveLength(1);
    }
    const midline = ends('9600', ' terminate switch').replace(
      'case1 : CaseBoard',
      'case1 : CaseBoard terminate switch',
    );
    expect(simulated(checkText(midline, ['terminator-midline'])[0]!)).toHaveLength(1);
  });

  it('makes a note of a tap that advice calls too long, where nothing is felt of it', () => {
    const tapped = (rate: string) =>
      bus(rate, [
        'from head : SiteHead terminate switch',
        '20 m to case1 : CaseBoard',
        'tap 18 m to probe : AirProbe',
        '20 m to case2 : CaseBoard terminate switch',
      ]);
    const [note] = checkText(tapped('9600'), ['tap-too-long']);
    expect(note?.severity).toBe('info');
    expect(simulated(note!)[0]).toContain('it is not felt at 9,600 bit/s');
    const all = checkText(tapped('921600'), ['tap-too-long', 'margin-low']);
    expect(all.map(({ rule, severity }) => [rule, severity])).toEqual([['tap-too-long', 'warning']]);
    expect(simulated(all[0]!)[0]).toContain('with every tap shortened to 0.3 m it would be');
  });

  it('is silent where it cannot be told', () => {
    const [finding] = checkText(ends('', ''), ['end-unterminated']);
    expect(simulated(finding!)).toEqual([]);
  });
});
