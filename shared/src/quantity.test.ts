import { expect, it } from 'vitest';
import { formatNumber, formatSignificant, formatVolts, volts } from './quantity.js';

it('what rounds to nothing has no sign', () => {
  expect(formatNumber(-0.4)).toBe('0');
  expect(formatSignificant(-0)).toBe('0');
  expect(formatVolts(volts(-1e-6))).toBe('0 mV');
  expect(formatVolts(volts(-0.2))).toBe('-200 mV');
});
