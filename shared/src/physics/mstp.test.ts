import { expect, it } from 'vitest';
import { bitsPerSecond } from '../quantity.js';
import { tokenCycle, tokenHop } from './mstp.js';

/** 8 octets and 40 bit times (ASHRAE 135 clause 9 as reproduced by open implementations), computed. */
it('hands the token on in 12.5 ms at 9600 and 3.13 ms at 38400 bit/s', () => {
  expect(1000 * tokenHop(bitsPerSecond(9600))).toBeCloseTo(12.5, 6);
  expect(1000 * tokenHop(bitsPerSecond(38_400))).toBeCloseTo(3.125, 6);
  expect(tokenCycle(bitsPerSecond(9600), 10)).toBeCloseTo(0.125, 9);
});
