import { expect, it } from 'vitest';
import { waveChart } from './wave-chart.js';

const thresholds = { low: -0.2, high: 0.2 };
const curve = (levels: readonly number[]) => ({ time: levels.map((_, index) => index * 1e-6), volts: levels });

it('draws edges from top to bottom, levels flat, and dots the thresholds', () => {
  const lines = waveChart({ samples: curve([1, 1, 1, 1, -1, -1, -1, -1]), thresholds, bits: '', bitTime: 1e-6 });
  expect(lines).toHaveLength(12);
  expect(lines[0]).toMatch(/^ {6}1 V ▀+/);
  expect(lines.at(-2)).toMatch(/^ {5}-1 V +[█▄]+▄$/);
  expect(lines.filter((line) => line.includes('·')).length).toBeGreaterThanOrEqual(1);
  expect(lines.at(-1)).toMatch(/0 ns +7 us$/);
});

it('keeps a peak between two columns', () => {
  const levels = new Array<number>(10_000).fill(0);
  levels[4321] = 3;
  const lines = waveChart({ samples: curve(levels), thresholds, bits: '', bitTime: 1e-6 });
  expect(lines[0]).toMatch(/^ {6}3 V +█$/);
});

it('names bits where there is room for them', () => {
  const samples = curve([0, 0, 1, 1, 0, 0]);
  expect(waveChart({ samples, thresholds, bits: '01', bitTime: 2e-6 })[0]).toMatch(/^ {5}bits +0 +1$/);
  expect(waveChart({ samples, thresholds, bits: '0'.repeat(60), bitTime: 1e-8 })[0]).not.toContain('bits');
});

it('draws nothing of nothing, and a flat line of a level that never changes', () => {
  expect(waveChart({ samples: curve([]), thresholds, bits: '', bitTime: 1e-6 })).toEqual([]);
  expect(waveChart({ samples: curve([0, 0, 0]), thresholds, bits: '', bitTime: 1e-6 }).join('')).toMatch(/[▀▄]{72}/);
});
