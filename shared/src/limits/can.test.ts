import { describe, expect, it } from 'vitest';
import { bitsPerSecond, metres } from '../quantity.js';
import { canGuides, canWireLimit } from './can.js';

const { cia, iso } = canGuides;
const kbit = (rate: number) => bitsPerSecond(rate * 1000);

describe('lengths on CAN', () => {
  // CiA page "CANopen lower layers", the bit timing table of CiA 301 and 102.
  it.each([
    [1000, 25, 1.5, 7.5],
    [800, 50, 2.5, 12.5],
    [500, 100, 5.5, 27.5],
    [250, 250, 11, 55],
    [125, 500, 22, 110],
    [50, 1000, 55, 275],
    [20, 2500, 137.5, 687.5],
    [10, 5000, 275, 1375],
  ])('at %i kbit/s are those of the CiA table', (rate, length, stub, stubSum) => {
    expect([cia.length(kbit(rate)), cia.stub(kbit(rate)), cia.stubSum(kbit(rate))]).toEqual([length, stub, stubSum]);
  });

  it('between two rates are those of the faster one, and beyond the table there are none', () => {
    expect(cia.length(kbit(100))).toBe(500);
    expect(cia.length(kbit(5))).toBe(5000);
    expect(cia.length(kbit(1001))).toBeUndefined();
  });

  it('by ISO 11898 are 40 m and stubs of 0.3 m at 1 Mbit/s (TI SLOA101B), 50 Mbit/s m on long lines (TI SLLA486B)', () => {
    expect([iso.length(kbit(1000)), iso.stub(kbit(1000))]).toEqual([40, 0.3]);
    expect(iso.length(kbit(125))).toBe(400);
    expect([iso.stub(kbit(125)), iso.stubSum()]).toEqual([undefined, undefined]);
  });

  it('have conductors of less resistance the longer they are, from memory of CiA 303-1', () => {
    const limits = [40, 40.1, 300, 600, 1000, 1001].map((length) => canWireLimit(metres(length))?.value);
    expect(limits).toEqual([0.07, 0.06, 0.06, 0.04, 0.026, undefined]);
    expect(canWireLimit(metres(40))?.strength).toBe('from memory');
  });
});
