import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Metres, metres, metresPerFoot } from '../quantity.js';
import { cutLength, readLength, readSlack, reelsFor, slackText, usualSlack } from './slack.js';

const feet = (value: number) => metres(value * metresPerFoot);

describe('slack', () => {
  it('is a share, a length at each end, or both, in either order', () => {
    expect(readSlack('5 % + 3 ft')).toEqual({ share: 0.05, perEnd: expect.closeTo(0.9144, 9) });
    expect(readSlack('1m+10%')).toEqual({ share: 0.1, perEnd: 1 });
    expect(readSlack('0 %')).toEqual({ share: 0, perEnd: 0 });
    expect(readSlack('18 in')).toEqual({ share: 0, perEnd: expect.closeTo(0.4572, 9) });
  });

  it('is nothing else', () => {
    for (const written of [
      '',
      '5',
      '5 % + 5 %',
      '3 ft + 3 ft',
      '-5 %',
      '5 ohm',
      '1e9 m',
      '201 %',
      '5 % 3 ft',
      'NaN m',
    ]) {
      expect(readSlack(written)).toBeUndefined();
    }
  });

  it('makes a piece by the rule that is told: 34 ft + 5 % + 3 ft at each end are 41.7 ft, cut at 42 ft', () => {
    expect(cutLength(feet(34), usualSlack, 'ft') / metresPerFoot).toBeCloseTo(42, 9);
    expect(cutLength(metres(10), { share: 0.05, perEnd: metres(1) }, 'm')).toBeCloseTo(12.5, 9);
    expect(slackText(usualSlack, ['ft'])).toBe('planned length + 5 % + 3 ft at each end, rounded up to the whole foot');
  });

  it('does not round a whole step up by what binary fractions leave over', () => {
    for (let length = 0; length < 500; length++) {
      expect(cutLength(feet(length), { share: 0, perEnd: metres(0) }, 'ft') / metresPerFoot).toBeCloseTo(length, 6);
    }
  });
});

describe('a reel', () => {
  it('is a length above nothing', () => {
    expect(readLength('1000 ft')).toBeCloseTo(304.8, 9);
    for (const written of ['0 m', '5', '', '5 ohm']) expect(readLength(written)).toBeUndefined();
  });

  it('is enough for each piece, and none of them has a joint', () => {
    expect(reelsFor([feet(600), feet(600), feet(400), feet(400)], feet(1000))).toBe(2);
    expect(reelsFor([feet(1001)], feet(1000))).toBeUndefined();
    expect(reelsFor([], feet(1000))).toBe(0);
  });

  it('is never counted less often than the sum needs, nor more often than there are pieces', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0.1, max: 300, noNaN: true })), (lengths) => {
        const reels = reelsFor(lengths as Metres[], metres(304.8))!;
        const sum = lengths.reduce((total, length) => total + length, 0);
        expect(reels).toBeGreaterThanOrEqual(Math.ceil(sum / 304.8 - 1e-9));
        expect(reels).toBeLessThanOrEqual(lengths.length);
      }),
    );
  });
});
