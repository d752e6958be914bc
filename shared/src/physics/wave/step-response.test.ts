import { describe, expect, it } from 'vitest';
import { gaussianIntegral, type StepResponse, stepResponse } from './step-response.js';
import type { WaveCircuit } from './wave-circuit.js';

const lineBetween = (
  resistance: number,
  inductance: number,
  capacitance: number,
  length: number,
  load: number,
): WaveCircuit => ({
  nodeCount: 2,
  media: [{ resistance, inductance, capacitance, skin: false }],
  lines: [{ from: 0, to: 1, length, medium: 0 }],
  conductances: Float64Array.from([0, 1 / load]),
  capacitances: new Float64Array(2),
  terminations: [],
});

const at = ({ rows, ends, start, spacing }: StepResponse, node: number, time: number): number =>
  rows[node]![Math.round((time - start) / spacing)] ?? ends[node]!;

describe('bounces on a line without loss', () => {
  const [impedance, delay] = [75, 10e-9];
  const plain = (load: number, ohms: number) => lineBetween(1e-7, ohms * 1e-8, 1e-8 / ohms, (delay / 1e-8) * 1, load);

  /** Intel 386 Hardware Reference Manual, figure 11-12 and table 11-1: 3.70 V, 30 ohm, 75 ohm, 100 ohm. */
  const source = [2.64286, 2.64286, 2.8586, 2.8586, 2.84539, 2.84539, 2.8462, 2.8462];
  const load = [0, 3.02041, 3.02041, 2.83549, 2.83549, 2.84681, 2.84681, 2.84611];
  it('are those of a published lattice diagram', () => {
    const response = stepResponse(plain(100, impedance), { conductance: 1 / 30, sigma: delay / 20 });
    for (let bounce = 0; bounce < 8; bounce++) {
      expect(3.7 * at(response, 0, (bounce + 0.5) * delay)).toBeCloseTo(source[bounce]!, 4);
      expect(3.7 * at(response, 1, (bounce + 0.5) * delay)).toBeCloseTo(load[bounce]!, 4);
    }
    expect(3.7 * response.ends[1]!).toBeCloseTo((3.7 * 100) / 130, 5);
  });

  /** D. M. Pozar, Microwave Engineering, example 2.9: 12 V, 50 ohm, 100 ohm, 200 ohm. */
  it('are those of a textbook: waves of 8, 8/3, -8/9 and -8/27 V', () => {
    const response = stepResponse(plain(200, 100), { conductance: 1 / 50, sigma: delay / 20 });
    const waves = [8, 8 + 8 / 3, 8 + 8 / 3 - 8 / 9, 8 + 8 / 3 - 8 / 9 - 8 / 27];
    expect(12 * at(response, 0, 0.5 * delay)).toBeCloseTo(waves[0]!, 4);
    expect(12 * at(response, 1, 1.5 * delay)).toBeCloseTo(waves[1]!, 4);
    expect(12 * at(response, 0, 2.5 * delay)).toBeCloseTo(waves[2]!, 4);
    expect(12 * at(response, 1, 3.5 * delay)).toBeCloseTo(waves[3]!, 4);
    expect(12 * response.ends[1]!).toBeCloseTo(9.6, 4);
  });
});

describe('a step into 1 km of a 24 AWG pair', () => {
  /** By numerical inverse Laplace transform with mpmath, by ngspice's LTRA and by a ladder of 1,000 cells alike. */
  const table = [
    [0.5, 1.3608, 0],
    [4, 1.5078, 0],
    [5.6, 1.5548, 0.6651],
    [6, 1.5651, 0.6707],
    [8, 1.6097, 0.6902],
    [10, 1.6451, 0.6989],
    [12, 1.6574, 0.7004],
    [20, 1.6553, 0.6895],
  ] as const;
  it('rises as three other methods have it', () => {
    const circuit = lineBetween(0.084, 0.648e-6, 45e-12, 1000, 120);
    const response = stepResponse(circuit, { conductance: 1 / 60, sigma: 4e-9 });
    expect(response.settled).toBe(true);
    for (const [microseconds, near, far] of table) {
      expect(Math.abs(2 * at(response, 0, microseconds * 1e-6 - 5e-9) - near)).toBeLessThan(2e-4);
      expect(Math.abs(2 * at(response, 1, microseconds * 1e-6 - 5e-9) - far)).toBeLessThan(2e-4);
    }
    expect(2 * response.ends[0]!).toBeCloseTo(1.65517, 5);
    expect(2 * response.ends[1]!).toBeCloseTo(0.689655, 6);
  });
});

describe('the window', () => {
  it('grows until an open line that is driven hard has come to rest', () => {
    const open = lineBetween(0.05, 0.6e-6, 42e-12, 500, 1e9);
    const response = stepResponse(open, { conductance: 1 / 11, sigma: 10e-9 });
    expect(response.settled).toBe(true);
    expect(Math.abs(response.rows[1]!.at(-1)! - response.ends[1]!)).toBeLessThan(1e-3);
    expect(Math.max(...response.rows[1]!)).toBeGreaterThan(1.5);
  });

  it('ends with a true answer that says so where nothing comes to rest', () => {
    const ringing = lineBetween(1e-9, 0.6e-6, 42e-12, 500, 1e12);
    const response = stepResponse(ringing, { conductance: 1e3, sigma: 10e-9 });
    expect(response.settled).toBe(false);
    const delay = 500 * Math.sqrt(0.6e-6 * 42e-12);
    expect(at(response, 1, 2 * delay)).toBeCloseTo(2, 2);
    expect(at(response, 1, 4 * delay)).toBeCloseTo(0, 2);
    for (const row of response.rows) expect(row.every(Number.isFinite)).toBe(true);
  });
});

/** M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, table 26.1. */
it('a Gaussian edge is the normal distribution', () => {
  expect(gaussianIntegral(0)).toBeCloseTo(0.5, 6);
  expect(gaussianIntegral(1)).toBeCloseTo(0.841344746, 6);
  expect(gaussianIntegral(-2)).toBeCloseTo(0.022750132, 6);
  expect(gaussianIntegral(1.2815515655)).toBeCloseTo(0.9, 6);
});
