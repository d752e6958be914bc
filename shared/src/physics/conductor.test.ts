import { describe, expect, it } from 'vitest';
import { isUnknown, type Known } from '../known.js';
import { celsius, ohmsPerMetre, squareMetres } from '../quantity.js';
import { testCable } from '../testing/network.js';
import { cableResistance, gaugeArea, gaugeDiameter, gaugeOfArea } from './conductor.js';

const known = <T>(value: Known<T>): T => {
  if (isUnknown(value)) throw new Error(value.unknown);
  return value;
};
const feetPerKilometre = 1000 / 304.8;

describe('the wire gauge', () => {
  it('has the two diameters that define it (ASTM B258): 0000 is 0.46 in, 36 is 0.005 in', () => {
    expect(gaugeDiameter(-3)).toBeCloseTo(0.46 * 0.0254, 9);
    expect(gaugeDiameter(36)).toBeCloseTo(0.005 * 0.0254, 12);
  });
  it('is found again from its area', () => {
    for (let gauge = -3; gauge <= 40; gauge++) expect(gaugeOfArea(gaugeArea(gauge))).toBeCloseTo(gauge, 9);
  });
});

describe('resistance of one conductor', () => {
  /** NBS Handbook 100, Copper Wire Tables, annealed copper at 20 degC, ohm per 1000 ft: as reprinted. */
  const handbook: readonly (readonly [gauge: number, ohmsPerThousandFeet: number])[] = [
    [10, 0.9989],
    [12, 1.588],
    [14, 2.525],
    [16, 4.016],
    [18, 6.385],
    [20, 10.15],
    [22, 16.14],
    [24, 25.67],
    [26, 40.81],
    [28, 64.9],
  ];
  it.each(handbook)('solid %i AWG at 20 degC is %f ohm per 1000 ft (NBS Handbook 100)', (gauge, expected) => {
    const { nominal, low, high } = known(cableResistance(testCable({ gauge }), celsius(20)));
    expect(nominal / (expected * feetPerKilometre * 1e-3)).toBeCloseTo(1, 3);
    expect(low).toBeLessThan(nominal);
    expect(nominal).toBeLessThan(high);
  });

  /** NFPA 70 chapter 9 table 8, uncoated copper at 75 degC, ohm per 1000 ft: solid and stranded, printed to 3 figures. */
  const code: readonly (readonly [gauge: number, solid: number, stranded: number])[] = [
    [18, 7.77, 7.95],
    [16, 4.89, 4.99],
    [14, 3.07, 3.14],
    [12, 1.93, 1.98],
    [10, 1.21, 1.24],
  ];
  it.each(code)('%i AWG at 75 degC is %f solid and %f stranded (NFPA 70 ch. 9 table 8)', (gauge, solid, stranded) => {
    const at = (stranding: 'solid' | 'stranded') =>
      known(cableResistance(testCable({ gauge, stranding, tinned: false }), celsius(75))).nominal /
      (feetPerKilometre * 1e-3);
    expect(Math.abs(at('solid') / solid - 1)).toBeLessThan(0.005);
    expect(Math.abs(at('stranded') / stranded - 1)).toBeLessThan(0.01);
  });

  /** IEC 60228 table 1 and 2, the most that plain conductors of class 1 and 2 may resist at 20 degC, ohm/km. */
  const most: readonly (readonly [area: number, limit: number])[] = [
    [0.5, 36],
    [0.75, 24.5],
    [1, 18.1],
    [1.5, 12.1],
    [2.5, 7.41],
  ];
  it.each(most)('of %f mm2 at 20 degC is 1/58 over the area, below the %f ohm/km of IEC 60228', (area, limit) => {
    const { nominal } = known(cableResistance({ ...testCable(), area: squareMetres(area * 1e-6) }, celsius(20)));
    expect(nominal * 1000).toBeCloseTo(1000 / (58 * area), 6);
    expect(nominal * 1000).toBeLessThan(limit);
    expect(nominal * 1000).toBeGreaterThan(0.92 * limit);
  });

  it('covers what a maker prints for real strandings of 20, 22 and 24 AWG, bare and tinned', () => {
    // A hook-up wire maker's table, ohm per 1000 ft: 7 x 32, 7 x 30 and 7 x 28 AWG.
    for (const [gauge, bare, tinned] of [
      [24, 23.1, 25.7],
      [22, 14.8, 16.6],
      [20, 9.33, 10.3],
    ] as const) {
      const { low, high } = known(cableResistance(testCable({ gauge, stranding: 'stranded' }), celsius(20)));
      expect(low).toBeLessThanOrEqual(bare * feetPerKilometre * 1e-3);
      expect(tinned * feetPerKilometre * 1e-3).toBeLessThanOrEqual(high);
    }
  });

  it('rises by 0.393 % a kelvin: 300 m of 24 AWG pair at 40 and 0 degC, computed from NBS Handbook 100', () => {
    const loop = (temperature: number) =>
      600 * known(cableResistance(testCable({ gauge: 24 }), celsius(temperature))).nominal;
    expect(loop(20)).toBeCloseTo(50.5, 1);
    expect(loop(40)).toBeCloseTo(54.5, 1);
    expect(loop(0)).toBeCloseTo(46.6, 1);
  });

  it('is what the cable states, when it states it', () => {
    const { nominal } = known(cableResistance(testCable({ resistance: ohmsPerMetre(0.0525) }), celsius(20)));
    expect(nominal).toBe(0.0525);
  });

  it('is unknown for a cable without a conductor, and says so', () => {
    const { gauge: _, ...cable } = testCable();
    expect(cableResistance(cable, celsius(20))).toEqual({ unknown: 'the conductor of cable TestPair' });
  });
});
