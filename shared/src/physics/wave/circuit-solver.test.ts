import { describe, expect, it } from 'vitest';
import { celsius } from '../../quantity.js';
import { gaugeArea, solidResistance } from '../conductor.js';
import { CircuitSolver, eliminationFor } from './circuit-solver.js';
import { skinConstant, skinRatio } from './skin.js';
import type { Line, Medium, WaveCircuit } from './wave-circuit.js';

const circuit = (medium: Medium, conductances: number[], lines: readonly Omit<Line, 'medium'>[]): WaveCircuit => ({
  nodeCount: conductances.length,
  media: [medium],
  lines: lines.map((line) => ({ ...line, medium: 0 })),
  conductances: Float64Array.from(conductances),
  capacitances: new Float64Array(conductances.length),
  terminations: [],
});

/** Volts of a node for one ampere into node 0, at a frequency in hertz. */
function volts(solved: WaveCircuit, node: number, frequency: number): { re: number; im: number } {
  const solver = new CircuitSolver(solved, eliminationFor(solved, 0));
  solver.solve(0, 2 * Math.PI * frequency);
  const row = solver.elimination.rowOf[node]!;
  return { re: solver.voltsRe[row]!, im: solver.voltsIm[row]! };
}

/** A pair of 24 AWG of 120 ohm: 0.168 ohm/m loop, 0.648 uH/m, 45 pF/m. */
const pair24: Medium = { resistance: 0.084, inductance: 0.648e-6, capacitance: 45e-12, skin: false };

describe('a line of 1 km between 120 ohm', () => {
  const matched = circuit(pair24, [1 / 120, 1 / 120], [{ from: 0, to: 1, length: 1000 }]);

  /** Load over source voltage by the chain matrix of a uniform line (D. M. Pozar, Microwave Engineering, table 4.1). */
  const table = [
    [1e3, 0.293899, -0.010935],
    [1e4, 0.272672, -0.106121],
    [1e5, -0.240952, 0.078659],
    [1e6, -0.201974, -0.144521],
  ] as const;
  it.each(table)('passes at %d Hz what the chain matrix says', (frequency, re, im) => {
    const load = volts(matched, 1, frequency);
    expect(load.re / 120).toBeCloseTo(re, 6);
    expect(load.im / 120).toBeCloseTo(im, 6);
  });

  it('is a resistor at direct current', () => {
    expect(volts(matched, 1, 0).re).toBeCloseTo((120 / (120 + 120 + 168)) * 120, 9);
  });

  it('is the same in pieces, down to a millimetre', () => {
    const cuts = [0, 0.002, 3, 250, 999.9, 1000];
    const pieces = circuit(
      pair24,
      [1 / 120, 0, 0, 0, 0, 1 / 120],
      cuts.slice(1).map((cut, index) => ({ from: index, to: index + 1, length: cut - cuts[index]! })),
    );
    for (const frequency of [1e-3, 1, 1e3, 1e5, 1e6, 3e7]) {
      const whole = volts(matched, 1, frequency);
      const joined = volts(pieces, 5, frequency);
      expect(Math.hypot(whole.re - joined.re, whole.im - joined.im)).toBeLessThan(1e-8 * 60);
    }
  });
});

describe('a line that has no end', () => {
  /** F. Ulaby, Fundamentals of Applied Electromagnetics, problem 2.5: the book rounds early, so within 1.5 %. */
  it('is that of a textbook: 31 - j0.01 ohm, 0.016 Np/m, 34 rad/m at 1 GHz', () => {
    const medium = { resistance: 0.5, inductance: 167e-9, capacitance: 172e-12, skin: false };
    const lines = [
      { from: 0, to: 1, length: 0.05 },
      { from: 1, to: 2, length: 5000 },
    ];
    const long = circuit(medium, [0, 0, 0], lines);
    const near = volts(long, 0, 1e9);
    const far = volts(long, 1, 1e9);
    expect(Math.abs(near.re / 31 - 1)).toBeLessThan(0.015);
    expect(near.im).toBeCloseTo(-0.0148, 3);
    const size = Math.hypot(far.re, far.im) / Math.hypot(near.re, near.im);
    expect(Math.abs(-Math.log(size) / 0.05 / 0.016 - 1)).toBeLessThan(0.015);
    const turn = Math.atan2(near.im, near.re) - Math.atan2(far.im, far.re);
    expect(Math.abs(turn / 0.05 / 34 - 1)).toBeLessThan(0.015);
  });

  /** Zc = sqrt((R + jwL)/jwC): at low rates far from the 120 ohm that the cable is sold by. */
  it.each([
    [1e3, 551.7, -538.5],
    [1e4, 194.3, -152.9],
    [1e5, 122.4, -24.3],
    [1e6, 120.03, -2.5],
  ])('has the impedance of the formula at %d Hz', (frequency, re, im) => {
    const near = volts(circuit(pair24, [0, 0], [{ from: 0, to: 1, length: 1e6 }]), 0, frequency);
    expect(Math.abs(near.re - re)).toBeLessThan(0.06);
    expect(Math.abs(near.im - im)).toBeLessThan(0.06);
  });
});

describe('loops', () => {
  it('give what the symmetry of a ring says: half a ring is two lines side by side', () => {
    const ring = circuit(
      pair24,
      [1 / 120, 0, 1 / 60, 0],
      [0, 1, 2, 3].map((node) => ({ from: node, to: (node + 1) % 4, length: 50 })),
    );
    const wide = { ...pair24, resistance: 0.042, inductance: 0.324e-6, capacitance: 90e-12 };
    const single = circuit(wide, [1 / 120, 1 / 60], [{ from: 0, to: 1, length: 100 }]);
    for (const frequency of [0, 1e4, 1e6]) {
      expect(volts(ring, 2, frequency).re).toBeCloseTo(volts(single, 1, frequency).re, 9);
      expect(volts(ring, 2, frequency).im).toBeCloseTo(volts(single, 1, frequency).im, 9);
    }
  });

  it('count a line back to its own start as its capacitance', () => {
    const looped = circuit(pair24, [1 / 120], [{ from: 0, to: 0, length: 100 }]);
    const { re, im } = volts(looped, 0, 1000);
    const size = re * re + im * im;
    expect(-im / size / (2 * Math.PI * 1000) / -1).toBeCloseTo(-45e-10, 12);
  });
});

describe('skin effect', () => {
  /** Rac/Rdc of a round wire by Bessel functions (S. Ramo, J. R. Whinnery, T. Van Duzer), computed with mpmath. */
  const table = [
    [24, 1.0005, 1.0447, 1.236, 2.206, 6.366],
    [22, 1.0012, 1.1073, 1.472, 2.704, 7.958],
    [18, 1.0075, 1.479, 2.211, 4.135, 12.5],
  ] as const;
  it.each(table)('of %i AWG at 10, 100, 250 kHz, 1 and 10 MHz is that of Bessel functions', (gauge, ...ratios) => {
    const resistance = solidResistance(gaugeArea(gauge), celsius(20));
    const out = new Float64Array(2);
    for (const [index, frequency] of [1e4, 1e5, 2.5e5, 1e6, 1e7].entries()) {
      skinRatio(0, (2 * Math.PI * frequency * skinConstant) / resistance, out);
      expect(Math.abs(out[0]! / ratios[index]! - 1)).toBeLessThan(1e-3);
    }
  });

  it('adds mu / 8 pi per wire to the inductance at low frequency, and nothing at direct current', () => {
    const out = new Float64Array(2);
    skinRatio(0, 1e-6, out);
    expect(out[0]).toBeCloseTo(1, 9);
    expect(out[1]).toBeCloseTo(0.5e-6, 9);
    skinRatio(0, 0, out);
    expect([...out]).toEqual([1, 0]);
  });
});
