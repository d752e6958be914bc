import { expect, it } from 'vitest';
import { momentAt, scaledAround, shareOf, shifted } from './span.js';

it('a moment stays where it is while a span grows or shrinks around it', () => {
  for (const factor of [0.5, 2]) {
    const span = scaledAround([10, 50], 20, factor);
    expect(span[1] - span[0]).toBe(40 * factor);
    expect(shareOf(span, 20)).toBe(shareOf([10, 50], 20));
  }
});

it('a span moves by a share of its length', () => {
  expect(shifted([10, 50], 0.25)).toEqual([20, 60]);
  expect(momentAt([10, 50], shareOf([10, 50], 33))).toBeCloseTo(33, 12);
});
