import { describe, expect, it } from 'vitest';
import { bitsPerSecond, metres } from '../quantity.js';
import { anyBus } from '../testing/waves.js';
import { bareBus } from './bare-bus.js';
import { signalOf } from './signal.js';
import { createStudy } from './study.js';

describe('a bare bus', () => {
  it('has the signal of the whole one: 12 random buses', () => {
    let told = 0;
    for (let seed = 1; seed <= 12; seed++) {
      const { store, bus, study } = anyBus(seed);
      if (bus.rate && 3e5 < bus.rate.value) continue;
      const signal = signalOf(study);
      expect(signalOf(createStudy(store, bareBus(bus))), String(seed)).toEqual(signal);
      if ('righted' in signal) told++;
    }
    expect(told).toBeGreaterThan(4);
  });

  it('is the same wherever the text is, and another when wiring, rate or ports change', () => {
    const { bus } = anyBus(3);
    const key = JSON.stringify(bareBus(bus));
    const place = { file: 'other.pair', start: 7, end: 9 };
    const moved = { ...bus, place, name: 'other', landings: bus.landings.map((one) => ({ ...one, place, name: 'x' })) };
    expect(JSON.stringify(bareBus(moved))).toBe(key);
    const longer = bus.runs.with(0, { ...bus.runs[0]!, length: metres(bus.runs[0]!.length + 1) });
    const [first] = bus.landings;
    const changed = [
      { ...bus, runs: longer },
      { ...bus, rate: { value: bitsPerSecond(1234), place } },
      { ...bus, landings: bus.landings.with(0, { ...first!, port: { ...first!.port!, edge: 1e-7 as never } }) },
      { ...bus, landings: bus.landings.with(0, { ...first!, crossed: place }) },
    ];
    for (const one of changed) expect(JSON.stringify(bareBus(one))).not.toBe(key);
  });
});
