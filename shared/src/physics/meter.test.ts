import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BusStudy } from '../figures/study.js';
import { isUnknown, type Range } from '../known.js';
import type { Device } from '../network.js';
import { farads, type Ohms, ohms } from '../quantity.js';
import { busOf, headDevice, testCable, testDevice } from '../testing/network.js';

const noLoad = testDevice('Bare', { unitLoad: 0 });
const readingAt = (study: BusStudy, landing: number): Range<Ohms> => {
  const reading = study.meter[landing]!;
  if (isUnknown(reading)) throw new Error(reading.unknown);
  return reading;
};

/** Two 120 ohm terminators, nothing else: `length` metres of a gauge with a landing in the middle. */
const bareBus = (gauge: number, length: number, far: number | null = 120, device: Device = noLoad) =>
  busOf('rs485', { cable: testCable({ gauge }) })
    .from('near', { device, terminate: 120 })
    .to('middle', length / 2, { device })
    .to('far', length / 2, { device, ...(far !== null && { terminate: far }) });

describe('what a meter reads', () => {
  /** Two terminators with the cable between them, at an end and in the middle: hand-solved from NBS Handbook 100. */
  const table = [
    [18, 100, 61.0, 61.0],
    [18, 300, 63.0, 63.1],
    [18, 600, 65.7, 66.3],
    [18, 1200, 70.4, 72.6],
    [22, 100, 62.5, 62.6],
    [22, 300, 67.0, 67.9],
    [22, 600, 72.6, 75.9],
    [22, 1200, 80.8, 91.8],
    [24, 100, 63.9, 64.2],
    [24, 300, 70.4, 72.6],
    [24, 600, 77.8, 85.3],
    [24, 1200, 87.4, 110.5],
  ] as const;
  it.each(table)('%i AWG, %i m: %f ohm at an end, %f ohm in the middle', (gauge, length, end, middle) => {
    const { study } = bareBus(gauge, length).built();
    expect(Math.abs(readingAt(study, 0).nominal - end)).toBeLessThan(0.06);
    expect(Math.abs(readingAt(study, 1).nominal - middle)).toBeLessThan(0.06);
    expect(readingAt(study, 2).nominal).toBeCloseTo(readingAt(study, 0).nominal, 9);
  });

  it('a missing terminator shows as 120 at the other end and more by the loop here', () => {
    const { study } = bareBus(22, 400, null).built();
    expect(readingAt(study, 0).nominal).toBeCloseTo(120, 6);
    expect(readingAt(study, 2).nominal).toBeCloseTo(120 + 800 * 0.05296, 1);
  });

  it('a broken wire leaves each end its own terminator', () => {
    const { study } = busOf('rs485')
      .from('near', { device: noLoad, terminate: 120 })
      .loose(50)
      .from('far', { device: noLoad, terminate: 120 })
      .built();
    expect([readingAt(study, 0).nominal, readingAt(study, 1).nominal]).toEqual([
      expect.closeTo(120, 9),
      expect.closeTo(120, 9),
    ]);
  });

  it('three and four terminators read 40 and 30', () => {
    for (const [extra, expected] of [
      [[120], 40],
      [[120, 120], 30],
    ] as const) {
      const terminations = extra.map((value) => ({ means: 'resistor' as const, resistance: ohms(value) }));
      const { study } = busOf('rs485')
        .from('near', { device: noLoad, terminate: 120 })
        .to('middle', 0, { device: noLoad, terminate: terminations })
        .to('far', 0, { device: noLoad, terminate: 120 })
        .built();
      expect(readingAt(study, 0).nominal).toBeCloseTo(expected, 9);
    }
  });

  it('32 unit loads are 750 ohm across the pair: 55.6 ohm with two terminators, near the 54 ohm of TIA-485-A', () => {
    const { study } = bareBus(22, 0, 120, testDevice('Heavy', { unitLoad: 32 / 3 })).built();
    expect(readingAt(study, 1).nominal).toBeCloseTo(55.56, 2);
    // What a port draws at most is known, what it draws at least is not.
    expect(readingAt(study, 1).high).toBeCloseTo(1.05 * 60 * 1.005 + 0.2, 6);
  });

  it('an unpowered bias of 2 x 510 ohm reads 56.7, of 2 x 650 ohm 57.4, or 60 when its supply is open', () => {
    for (const [resistor, expected] of [
      [510, 56.7],
      [650, 57.4],
    ] as const) {
      const { study } = bareBus(22, 0).bias('near', resistor).built();
      expect(readingAt(study, 0).nominal).toBeCloseTo(expected, 1);
      expect(readingAt(study, 0).high).toBeGreaterThan(60);
    }
  });

  it('a short of 0 ohm 80 m along 400 m of 22 AWG reads 7.91 ohm here and 26.43 ohm there', () => {
    const { study } = busOf('rs485')
      .from('near', { device: noLoad, terminate: 120 })
      .to('fault', 80, { splice: true, terminate: 0 })
      .to('far', 320, { device: noLoad, terminate: 120 })
      .built();
    expect(readingAt(study, 0).nominal).toBeCloseTo(7.91, 1);
    expect(readingAt(study, 1).nominal).toBeLessThan(1e-6);
    expect(readingAt(study, 2).nominal).toBeCloseTo(26.43, 1);
    expect(readingAt(study, 1).low).toBe(0);
  });

  it('R-C terminators are open to direct current', () => {
    const ac = [{ means: 'resistor' as const, resistance: ohms(120), capacitance: farads(1e-9) }];
    const { study } = busOf('modbus-rtu')
      .from('near', { device: noLoad, terminate: ac })
      .to('far', 10, { device: noLoad, terminate: ac })
      .built();
    expect(readingAt(study, 0)).toEqual({ nominal: Infinity, low: Infinity, high: Infinity });
  });

  it('is unknown where a cable, a load or the kind is, and says which', () => {
    const unknowns = (bus: ReturnType<typeof busOf>) => bus.built().study.meter;
    expect(unknowns(busOf('rs485').from('a').to('b', 5, { cable: null }).from('c').to('d', 1))).toEqual([
      { unknown: 'the cable of the run from a to b' },
      { unknown: 'the cable of the run from a to b' },
      expect.objectContaining({ nominal: expect.any(Number) }),
      expect.objectContaining({ nominal: expect.any(Number) }),
    ]);
    expect(unknowns(busOf('rs485').from('a', { device: null }))).toEqual([{ unknown: 'the unit load of a' }]);
    expect(unknowns(busOf('ethernet').from('a'))).toEqual([
      { unknown: 'what the transformers in Ethernet ports show a meter' },
    ]);
    expect(unknowns(busOf(undefined).from('a'))).toEqual([{ unknown: 'the kind of the bus' }]);
  });

  it('does not depend on the order of the text, is positive and lies in its range', () => {
    const runs = fc.array(fc.double({ min: 0, max: 500, noNaN: true }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(runs, (lengths) => {
        const count = lengths.length;
        const words = (index: number) => ({
          device: index === 0 ? headDevice : testDevice('Any'),
          ...((index === 0 || index === count) && { terminate: 120 }),
        });
        const forward = busOf('rs485').from('n0', words(0));
        for (const [index, length] of lengths.entries()) forward.to(`n${index + 1}`, length, words(index + 1));
        const backward = busOf('rs485').from(`n${count}`, words(count));
        for (const [index, length] of [...lengths.entries()].reverse()) backward.to(`n${index}`, length, words(index));
        const [there, back] = [forward.built(), backward.built()];
        expect(there.study.length).toBeCloseTo(back.study.length, 6);
        expect(there.study.length).toBeCloseTo(
          lengths.reduce((sum, length) => sum + length, 0),
          6,
        );
        for (let index = 0; index <= count; index++) {
          const reading = readingAt(there.study, index);
          expect(readingAt(back.study, count - index).nominal).toBeCloseTo(reading.nominal, 6);
          expect(0 < reading.low && reading.low < reading.nominal && reading.nominal < reading.high).toBe(true);
        }
      }),
    );
  });
});
