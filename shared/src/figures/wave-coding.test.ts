import { describe, expect, it } from 'vitest';
import { busOf, testDevice } from '../testing/network.js';
import { waves } from '../testing/waves.js';

const device = testDevice('Any', { edge: 200e-9 as never });
const bus = (kind: 'rs485' | 'peer-485', rate: number, length: number) =>
  busOf(kind, { rate }).from('a', { device, terminate: 120 }).to('b', length, { device, terminate: 120 }).built();

// Differential Manchester, from memory of ISO/IEC 14908 transceiver data books: a change of level at the start of every
// bit, and one more halfway through a 0.
describe('bits of a peer bus', () => {
  it('are two levels each', () => {
    const { pattern } = waves(bus('peer-485', 9765.625, 10), { driver: 0, pattern: '1100', samples: 16 });
    expect(pattern.volts[0]).toHaveLength(3 * 16 + 1);
    const halves = Array.from({ length: 6 }, (_, half) => Math.sign(pattern.volts[0]![half * 8 + 4]!));
    // 1: down and stays; 0: up, down; 0: up, down.
    expect(halves).toEqual([-1, -1, 1, -1, 1, -1]);
  });

  it('leave no more than plain bits of half the time do', () => {
    for (const length of [50, 400]) {
      const halves = waves(bus('peer-485', 156_250, length), { driver: 0 });
      const plain = waves(bus('rs485', 312_500, length), { driver: 0 });
      for (const [index, { margin, opening }] of halves.landings.entries()) {
        expect(opening.low).toBeCloseTo(plain.landings[index]!.opening.low, 6);
        // They are sampled more surely, because every bit gives the receiver its time anew.
        expect(margin.low).toBeGreaterThanOrEqual(plain.landings[index]!.margin.low - 1e-9);
      }
      expect(halves.samplingAt.nominal).toBeCloseTo(0.75, 9);
      expect(halves.assumptions[0]).toContain('differential Manchester');
    }
  });
});
