import { describe, expect, it } from 'vitest';
import { isUnknown } from '../known.js';
import { bitsPerSecond, farads, seconds } from '../quantity.js';
import { type BuiltBus, busOf, testDevice } from '../testing/network.js';
import { busMargin, healthyMargin, isHealthy } from './bus-margin.js';
import { isPlainlyHealthy, type Signal, signalOf } from './signal.js';
import { createStudy } from './study.js';

const device = testDevice('Any', { edge: seconds(30e-9), capacitance: farads(15e-12) });

function signal({ study }: BuiltBus): Signal {
  const answer = signalOf(study);
  if (isUnknown(answer)) throw new Error(answer.unknown);
  return answer;
}

interface Faults {
  readonly far?: number;
  readonly middle?: number;
  readonly crossed?: boolean;
  readonly tap?: number;
  readonly device?: typeof device;
}

function chain(rate: number, { far, middle, crossed = false, tap = 0.2, ...more }: Faults): BuiltBus {
  const words = { device: more.device ?? device };
  const bus = busOf('rs485', { rate }).from('a', { ...words, terminate: 120 });
  bus.to('b', 40, { ...words, crossed, ...(middle !== undefined && { terminate: middle }) });
  bus.tap('t', tap, words).to('c', 60, words);
  return bus.to('d', 50, { ...words, ...(far !== undefined && { terminate: far }) }).built();
}

describe('the signal of a bus', () => {
  it('is itself alone where it is healthy, fault or not', () => {
    const missing = chain(9600, {});
    const { asWritten, righted, withoutTaps, alone, slower } = signal(missing);
    expect(isHealthy(asWritten)).toBe(true);
    expect([righted, withoutTaps, alone.size, slower]).toEqual([asWritten, asWritten, 0, undefined]);
  });

  it('tells what one missing terminator does, and what the right one gives', () => {
    const built = chain(2e6, {});
    const { asWritten, alone, righted } = signal(built);
    expect(asWritten.margin).toBeLessThan(0);
    expect([...alone]).toEqual([[built.landing('d').index, asWritten]]);
    expect(righted.margin).toBe((busMargin(chain(2e6, { far: 120 }).study) as typeof righted).margin);
  });

  it('tells each fault of several apart', () => {
    const built = chain(2e6, { middle: 120, crossed: true });
    const { asWritten, alone } = signal(built);
    const [b, d] = [built.landing('b').index, built.landing('d').index];
    expect(alone.get(d)!.margin).toBe(signal(chain(2e6, {})).asWritten.margin);
    expect(alone.get(b)!.margin).toBe(signal(chain(2e6, { far: 120, middle: 120 })).asWritten.margin);
    // Crossed, every bit is read as the other.
    expect(asWritten.margin).toBeLessThan(-2);
  });

  it('tells what long taps take', () => {
    const { righted, withoutTaps } = signal(chain(5e6, { far: 120, tap: 15 }));
    expect(isHealthy(righted)).toBe(false);
    expect(withoutTaps.margin).toBeGreaterThan(righted.margin);
  });

  it('tells the fastest slower rate that all devices take and that is healthy', () => {
    const rates = [9600, 38_400, 115_200, 460_800, 921_600].map(bitsPerSecond);
    const heavy = testDevice('Heavy', { edge: seconds(30e-9), capacitance: farads(20e-9), rates });
    const { asWritten, slower } = signal(chain(460_800, { far: 120, device: heavy }));
    expect(asWritten.margin).toBeLessThan(healthyMargin);
    expect(rates).toContain(slower!.rate);
    const at = (rate: number) => busMargin(chain(rate, { far: 120, device: heavy }).study) as typeof asWritten;
    expect(at(slower!.rate)).toEqual(slower!.margin);
    expect(isHealthy(at(slower!.rate))).toBe(true);
    const faster = rates.find((rate) => slower!.rate < rate && rate < 460_800);
    if (faster) expect(isHealthy(at(faster))).toBe(false);
  });

  it('tells the length that would do where it is the wire that takes the level', () => {
    const thin = busOf('rs485', { rate: 9600 }).from('a', { device, terminate: 120 }).bias('a', 390);
    const built = thin.to('b', 3000, { device, terminate: 120 }).built();
    const { slower, shorter } = signal(built);
    expect(slower).toBeUndefined();
    const runs = built.bus.runs.map((run) => ({ ...run, length: (run.length * shorter!) as typeof run.length }));
    expect(isHealthy(busMargin(createStudy(built.store, { ...built.bus, runs })) as never)).toBe(true);
  });

  it('is unknown with the reason where a value is missing', () => {
    expect(signalOf(busOf('rs485').from('a').to('b', 5).built().study)).toEqual({ unknown: 'the rate of the bus' });
  });
});

describe('a bus that is plainly healthy', () => {
  it('is healthy when it is simulated, and a usual one is', () => {
    for (const [rate, length] of [
      [9600, 40],
      [19_200, 300],
      [38_400, 100],
      [115_200, 10],
    ] as const) {
      const { study } = busOf('modbus-rtu', { rate })
        .from('a', { device, terminate: 120 })
        .to('b', length, { device, terminate: 120 })
        .built();
      expect(isPlainlyHealthy(study)).toBe(true);
      expect(isHealthy(busMargin(study) as never)).toBe(true);
    }
    expect(isPlainlyHealthy(chain(2e6, {}).study)).toBe(false);
  });
});
