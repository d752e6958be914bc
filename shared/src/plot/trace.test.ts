import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { levelAt, pixelPoints, type Samples } from './trace.js';

const same = (value: number) => value;
const curve = (...points: readonly (readonly [number, number])[]): Samples => ({
  time: points.map(([time]) => time),
  volts: points.map(([, volts]) => volts),
});

describe('the points of a curve', () => {
  it('keep every peak, however short', () => {
    const samples = {
      time: Float64Array.from({ length: 100_000 }, (_, index) => index / 100),
      volts: new Float64Array(100_000),
    };
    samples.volts[43_217] = 5;
    samples.volts[43_219] = -3;
    const points = pixelPoints(samples, same, same);
    expect(points.length).toBeLessThan(20);
    expect(Math.max(...points.map(([, y]) => y))).toBe(5);
    expect(Math.min(...points.map(([, y]) => y))).toBe(-3);
  });

  it('give the same picture as all samples would, to a quarter of a pixel', () => {
    const slopes = fc.array(
      fc.record({ step: fc.double({ min: 1, max: 9, noNaN: true }), y: fc.double({ min: -50, max: 50, noNaN: true }) }),
      { minLength: 1, maxLength: 200 },
    );
    fc.assert(
      fc.property(slopes, (list) => {
        let x = 0;
        const all = list.map(({ step, y }) => {
          x += step;
          return [x, y] as const;
        });
        const points = pixelPoints(curve(...all), same, same);
        const kept = curve(...points);
        for (const [at, y] of all) expect(Math.abs(levelAt(kept, at)! - y)).toBeLessThanOrEqual(0.25 + 1e-9);
      }),
    );
  });

  it('leave out what is not finite', () => {
    const points = pixelPoints(
      curve([0, 0], [1, Number.NaN], [Number.NaN, 4], [2, Number.POSITIVE_INFINITY], [3, 8], [4, 0]),
      same,
      same,
    );
    expect(points).toEqual([
      [0, 0],
      [3, 8],
      [4, 0],
    ]);
    expect(pixelPoints(curve(), same, same)).toEqual([]);
  });
});

describe('the level at a moment', () => {
  it('lies between the samples around it', () => {
    const samples = curve([0, 1], [2, 3], [2, 5], [4, 5]);
    expect([0, 1, 3, 4].map((moment) => levelAt(samples, moment))).toEqual([1, 2, 5, 5]);
    expect([-0.1, 4.1, Number.NaN].map((moment) => levelAt(samples, moment))).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
    expect(levelAt(curve(), 0)).toBeUndefined();
  });
});
