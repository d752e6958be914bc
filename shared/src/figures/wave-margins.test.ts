import { describe, expect, it } from 'vitest';
import { isUnknown } from '../known.js';
import { seconds } from '../quantity.js';
import { chanceOf } from '../testing/chance.js';
import { type BuiltBus, busOf, testCable, testDevice } from '../testing/network.js';
import { easyShare, marginFloor, marginsOf, settlesEasily } from './wave-margins.js';
import { wavesOf } from './waves.js';

/** A chain with taps, healthy or nearly so, on which the screen may say yes. */
function drawnChain(seed: number): BuiltBus {
  const chance = chanceOf(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(chance() * list.length)]!;
  const count = 2 + Math.floor(chance() * 20);
  const kind = pick(['modbus-rtu', 'rs485', 'can'] as const);
  const rate = pick([9600, 19_200, 38_400, 76_800, 125_000, 250_000, 500_000]);
  const cable = testCable({ gauge: pick([18, 22, 24, 26]), impedance: pick([100, 120, 150]) as never });
  const edge = pick([undefined, 25e-9, 250e-9, 1e-6]);
  const longest = 10 ** (2.9 * chance()) / count;
  const device = () =>
    testDevice('Any', {
      unitLoad: pick([0.125, 1]),
      ...(edge !== undefined && { edge: edge as never }),
      ...(chance() < 0.3 && { capacitance: (chance() * 200e-12) as never }),
    });
  const terminate = () => pick([120, 120, 100, 150]);
  const bus = busOf(kind, { rate, cable }).from('n0', { device: device(), terminate: terminate() });
  for (let index = 1; index < count; index++) {
    const last = index === count - 1;
    bus.to(`n${index}`, chance() * longest, {
      device: device(),
      ...(last && { terminate: terminate() }),
      crossed: chance() < 0.02,
    });
    if (!last && chance() < 0.3) bus.tap(`t${index}`, chance() * 3, { device: device() });
  }
  if (kind !== 'can' && chance() < 0.5) bus.bias(`n${Math.floor(chance() * count)}`, 560);
  return bus.built();
}

describe('a bus that settles easily', () => {
  it('has at the sampling instants the levels that it settles at: 400 random chains', () => {
    let easy = 0;
    let worst = 0;
    for (let seed = 1; seed <= 400; seed++) {
      const { study, bus } = drawnChain(seed);
      const driver = seed % bus.landings.length;
      if (!settlesEasily(study, driver)) continue;
      easy++;
      const waves = wavesOf(study, { driver });
      if (isUnknown(waves)) throw new Error(waves.unknown);
      for (const [landing, margin] of marginsOf(study, driver).entries()) {
        if (isUnknown(margin)) throw new Error(margin.unknown);
        const simulated = waves.landings[landing]!;
        for (const end of ['nominal', 'low', 'high'] as const) {
          const swing = 2 * Math.abs(simulated.level[end]);
          worst = Math.max(worst, Math.abs(simulated.margin[end] - margin[end]) / swing);
        }
      }
    }
    expect(easy).toBeGreaterThan(100);
    expect(worst).toBeLessThan(easyShare);
  });

  it('never has less than its floor, whichever device drives: 400 random chains', () => {
    let told = 0;
    for (let seed = 1; seed <= 400; seed++) {
      const { study, bus } = drawnChain(seed);
      const floor = marginFloor(study);
      if (floor === undefined) continue;
      told++;
      for (const driver of new Set([0, seed % bus.landings.length])) {
        const waves = wavesOf(study, { driver });
        if (isUnknown(waves)) throw new Error(waves.unknown);
        for (const { margin } of waves.landings) expect(floor).toBeLessThanOrEqual(margin.low);
      }
    }
    expect(told).toBeGreaterThan(50);
  });

  it('is told at once: a usual bus of cases at 19200 bit/s has a floor well above the threshold', () => {
    const device = testDevice('Case', { edge: seconds(250e-9) });
    const bus = busOf('modbus-rtu', { rate: 19_200 }).from('head', { device, terminate: 120 });
    for (let index = 1; index < 25; index++)
      bus.to(`case${index}`, 8, { device, ...(index === 24 && { terminate: 120 }) });
    const { study } = bus.bias('head', 510).built();
    expect(settlesEasily(study, 0)).toBe(true);
    expect(marginFloor(study)).toBeGreaterThan(0.2);
  });
});

it('does not simulate a bus with more landings than anybody could wait for', () => {
  const bus = busOf('rs485', { rate: 19_200, cable: testCable({}) }).from('n0', {});
  for (let index = 1; index <= 1000; index++) bus.to(`n${index}`, 1, {});
  const { study } = bus.built();
  const [margin] = marginsOf(study, 0);
  expect(margin).toEqual({ unknown: 'the margin of a bus with 1001 landings, more than 1000' });
});
