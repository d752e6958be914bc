import { describe, expect, it } from 'vitest';
import { ohms, ratio, volts } from '../quantity.js';
import { idleOfBias, largestBias } from './bias.js';

const pair = (supply: number, termination: number, unitLoads: number) => ({
  supply: volts(supply),
  termination: ohms(termination),
  unitLoads: ratio(unitLoads),
});

describe('bias in closed form', () => {
  it('needs 720 ohm or less for 200 mV from 5 V on two 120 ohm, loads aside', () => {
    expect(largestBias(pair(5, 60, 0), volts(0.2))).toBeCloseTo(720, 9);
  });

  /** The terminator beside the bias raised so that with both bias resistors across it the bus still ends in 120 ohm. */
  const matched = (resistor: number) => 1 / (2 / 120 - 1 / (2 * resistor));

  it('gives 527.8 ohm in the application report SLLA272 (from memory): 4.75 V, 0.25 V, 32 loads, 120 ohm of bus', () => {
    expect(largestBias(pair(4.75, matched(527.8), 32), volts(0.25))).toBeCloseTo(527.8, 1);
  });

  it('gives 305.6 ohm for 300 mV from 3.3 V; the 333.3 ohm of a formula in circulation leave 275 mV', () => {
    expect(largestBias(pair(3.3, matched(305.556), 32), volts(0.3))).toBeCloseTo(305.556, 2);
    expect(1000 * idleOfBias(pair(3.3, matched(333.333), 32), ohms(333.333))).toBeCloseTo(275, 0);
  });

  it('is any when nothing loads the pair, and none when the supply is too low', () => {
    expect(largestBias(pair(5, Number.POSITIVE_INFINITY, 0), volts(0.2))).toBe(Infinity);
    expect(largestBias(pair(0.1, 60, 0), volts(0.2))).toBe(0);
  });
});
