import { describe, expect, it } from 'vitest';
import { isUnknown } from '../known.js';
import type { Fault } from '../physics/wave/fault.js';
import { bitsPerSecond, farads, metres, ohms, ratio, seconds } from '../quantity.js';
import { busOf, testDevice } from '../testing/network.js';
import { anyBus, chain, fast, slow, waves } from '../testing/waves.js';
import { createStudy } from './study.js';

describe('levels', () => {
  it('end where the nodal solution of the two wires has them: 40 random buses', () => {
    let compared = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const built = anyBus(seed);
      const { bus, store } = built;
      if (bus.kind === 'can') continue;
      // Without bias, and with the driver's output as a terminator beside it, the meter reads 1 / (G + 1 / output).
      const biases: typeof bus.biases = [];
      const unbiased = { ...bus, biases };
      const [answer, study] = [waves(built, { driver: 0, nominalOnly: true }), createStudy(store, unbiased)];
      const meter = study.meter[0]!;
      if (isUnknown(meter)) throw new Error(meter.unknown);
      const driven = waves({ ...built, study }, { driver: 0, nominalOnly: true });
      // 5 V behind 64.29 ohm (see drive.ts) into what a meter reads there.
      const own = (5 * meter.nominal) / (meter.nominal + 64.2857142857);
      expect(driven.landings[0]!.level.nominal).toBeCloseTo(Number.isFinite(meter.nominal) ? own : 5, 4);
      for (const row of [...answer.step.volts, ...answer.pattern.volts]) expect(row.every(Number.isFinite)).toBe(true);
      compared++;
    }
    expect(compared).toBeGreaterThan(20);
  });

  it('lie around what the bias gives beside the driver, as the nodal solution of idle levels has it', () => {
    let worst = 0;
    for (const [up, down, allowed] of [
      [560, 560, 1e-4],
      [560, 400, 3e-3],
    ] as const) {
      for (const place of ['n0', 'n3', 'n7']) {
        const drawn = (output: boolean) => {
          const bus = busOf('rs485', { rate: 9600 }).from('n0', { terminate: 120 });
          for (let index = 1; index < 8; index++) {
            const place = { file: '', start: 0, end: 0 };
            const driver = { means: 'resistor', resistance: ohms(64.2857142857), place } as const;
            bus.to(
              `n${index}`,
              60,
              index === 7 ? { terminate: 120 } : { terminate: output && index === 2 ? [driver] : [] },
            );
          }
          return bus.bias(place, up, down).built();
        };
        const held = (pattern: string) => waves(drawn(false), { driver: 2, nominalOnly: true, pattern }).pattern.volts;
        const [zero, one] = [held('0'), held('1')];
        for (const [landing, idle] of drawn(true).study.idle.entries()) {
          if (isUnknown(idle)) throw new Error(idle.unknown);
          const middle = (zero[landing]![0]! + one[landing]![0]!) / 2;
          worst = Math.max(worst, Math.abs(middle - idle.nominal) / allowed);
        }
      }
    }
    expect(worst).toBeLessThan(1);
  });

  it('fall towards the far end as the loop resistance has it', () => {
    const built = busOf('rs485', { rate: 9600 })
      .from('a', { device: testDevice('None', { unitLoad: 0 }), terminate: 120 })
      .to('b', 500, { device: testDevice('None', { unitLoad: 0 }), terminate: 120 })
      .built();
    const { landings } = waves(built, { driver: 0, nominalOnly: true });
    const loop = 1000 * 0.052_96;
    expect(landings[1]!.level.nominal / landings[0]!.level.nominal).toBeCloseTo(120 / (120 + loop), 4);
  });

  it('count the bias against the driver, as the idle level tells it', () => {
    const words = { device: testDevice('None', { unitLoad: 0 }), terminate: 120 };
    const built = busOf('rs485', { rate: 9600 }).from('a', words).to('b', 0, words).bias('a', 560).built();
    const { step } = waves(built, { driver: 0, nominalOnly: true });
    const output = 64.2857142857;
    const pair = 1 / (1 / 60 + 1 / output + 1 / 1120);
    const [low, high] = [step.volts[0]![0]!, step.volts[0]!.at(-1)!];
    expect((low + high) / 2).toBeCloseTo((5 / 1120) * pair, 4);
    expect((high - low) / 2).toBeCloseTo((5 / output) * pair, 4);
  });

  it('of the least driver are 1.5 V into 54 ohm, of the most 5 V (TIA-485-A)', () => {
    const device = testDevice('None', { unitLoad: 0, edge: seconds(1e-7), capacitance: farads(0) });
    const at = (value: number) => busOf('rs485', { rate: 9600 }).from('a', { device, terminate: value }).built();
    // Corners take terminators 5 % off: 54 ohm is what they come to.
    expect(waves(at(54 / 0.95), { driver: 0 }).landings[0]!.level.low).toBeCloseTo(1.5, 4);
    expect(waves(at(54 / 1.05), { driver: 0 }).landings[0]!.level.high).toBeCloseTo(5, 4);
  });
});

describe('the wave', () => {
  it('arrives at each landing after the travel time', () => {
    const bare = testDevice('Bare', { edge: seconds(50e-9), capacitance: farads(0) });
    const { landings } = waves(chain(8, bare), { driver: 0, nominalOnly: true });
    for (const [index, { delay }] of landings.entries()) {
      const travel = (index * 10) / (0.66 * 299_792_458);
      // The wires' inner inductance and the loads slow it down a little.
      expect(delay - travel).toBeGreaterThan(-1e-9);
      expect(delay - travel).toBeLessThan(1e-9 + 0.02 * travel);
    }
  });

  it('is seen the other way round at a crossed landing, which then reads every bit wrong', () => {
    const faults: Fault[] = [{ kind: 'crossed', landing: 2 }];
    const [sound, crossed] = [waves(chain(4), { driver: 0 }), waves(chain(4), { driver: 0, faults })];
    expect(crossed.landings[2]!.level.nominal).toBeCloseTo(-sound.landings[2]!.level.nominal, 9);
    expect(crossed.landings[2]!.margin.high).toBeLessThan(-1);
    expect(crossed.landings[2]!.opening.high).toBe(0);
    expect(crossed.landings[3]!.margin.nominal).toBeCloseTo(sound.landings[3]!.margin.nominal, 9);
    for (const [point, value] of crossed.pattern.volts[2]!.entries()) {
      expect(value).toBeCloseTo(-sound.pattern.volts[2]![point]!, 9);
    }
  });

  it('follows its bits, the first of which was there before', () => {
    const { pattern, landings } = waves(chain(2, slow, 9600), { driver: 0, pattern: '0110', samples: 8 });
    const level = landings[0]!.level.nominal;
    expect(pattern.time.length).toBe(3 * 8 + 1);
    expect(pattern.volts[0]![4]).toBeCloseTo(level, 2);
    expect(pattern.volts[0]![12]).toBeCloseTo(level, 2);
    expect(pattern.volts[0]![20]).toBeCloseTo(-level, 2);
  });

  it('shows faults where they are', () => {
    const long = (faults: Fault[]) => waves(chain(20, fast, 1e6), { driver: 0, faults, nominalOnly: true }).landings;
    const sound = long([]);
    expect(sound.every(({ cutOff }) => !cutOff)).toBe(true);
    const open = long([{ kind: 'open', run: 9, at: ratio(0.5) }]);
    expect(open.map(({ cutOff }) => cutOff)).toEqual(sound.map((_, index) => 10 <= index));
    const unterminated = long([{ kind: 'terminators', landing: 19, terminations: [] }]);
    // An open end doubles the wave; the driver's own end has its terminator.
    expect(unterminated[19]!.level.nominal).toBeGreaterThan(1.3 * sound[19]!.level.nominal);
    const short = long([{ kind: 'short', run: 18, at: ratio(1), resistance: ohms(1) }]);
    expect(short[19]!.margin.nominal).toBeLessThan(0);
    expect(short[0]!.level.nominal).toBeGreaterThan(short[19]!.level.nominal);
    const tapped = busOf('rs485', { rate: 10e6 }).from('a', { device: fast, terminate: 120 }).to('b', 20).tap('c', 1);
    const withTap = tapped.to('d', 20, { terminate: 120 }).built();
    const grown = waves(withTap, { driver: 0, faults: [{ kind: 'length', run: 1, length: metres(15) }] });
    expect(grown.landings[2]!.settling).toBeGreaterThan(2 * waves(withTap, { driver: 0 }).landings[2]!.settling);
  });
});

describe('the margin', () => {
  /** Every pattern of so many bits, driven and looked at one by one. */
  it('is the worst of all patterns', () => {
    const built = busOf('rs485', { rate: 4e6 })
      .from('a', { device: fast, terminate: 120 })
      .to('b', 20)
      .tap('c', 6)
      .to('d', 15, { terminate: 100 })
      .built();
    const { landings, samplingAt, bitTime, threshold } = waves(built, { driver: 0, nominalOnly: true });
    const worst = landings.map(() => Number.POSITIVE_INFINITY);
    const samples = 128;
    for (let pattern = 0; pattern < 2 ** 9; pattern++) {
      const bits = `0${pattern.toString(2).padStart(9, '0')}0`;
      const driven = waves(built, { driver: 0, pattern: bits, samples, nominalOnly: true });
      for (const { landing, delay } of landings) {
        for (const share of [samplingAt.low, samplingAt.nominal, samplingAt.high]) {
          const level = driven.pattern.volts[landing]![Math.round((7 + share + delay / bitTime) * samples)]!;
          const beyond = bits[8] === '1' ? level - threshold.high : threshold.low - level;
          worst[landing] = Math.min(worst[landing]!, beyond);
        }
      }
    }
    for (const { landing, margin } of landings) {
      expect(margin.nominal).toBeLessThan(worst[landing]! + 0.02);
      expect(margin.nominal).toBeGreaterThan(worst[landing]! - 0.12);
    }
  }, 60_000);

  it('shrinks to nothing as the rate grows, without a jump or a number that is none', () => {
    const built = chain(12);
    let before = Number.POSITIVE_INFINITY;
    for (const rate of [1e-3, 1, 9600, 115_200, 1e6, 3e6, 6e6, 1e7, 3e7, 1e8, 1e10, 1e15]) {
      const { landings } = waves(built, { driver: 0, rate: bitsPerSecond(rate) });
      const { margin, opening } = landings[11]!;
      for (const value of [margin.low, margin.nominal, margin.high]) expect(Number.isFinite(value)).toBe(true);
      expect(margin.low).toBeLessThanOrEqual(margin.nominal);
      expect(margin.nominal).toBeLessThanOrEqual(before + 0.05);
      expect(opening.low).toBeGreaterThanOrEqual(0);
      expect(opening.high).toBeLessThanOrEqual(1);
      before = margin.nominal;
    }
    expect(before).toBeLessThan(0);
  });
});

describe('CAN', () => {
  it('is let go through what hangs on the pair: rise and fall of a capacitor have their own time constants', () => {
    const nanofarad = testDevice('Heavy', { kind: 'can', edge: seconds(10e-9), capacitance: farads(10e-9) });
    const built = busOf('can', { rate: 10_000 }).from('a', { device: nanofarad, terminate: 60 }).built();
    const { pattern, landings } = waves(built, { driver: 0, pattern: '1011', samples: 256, nominalOnly: true });
    const { nominal } = landings[0]!.level;
    expect(nominal).toBeCloseTo(2, 2);
    const released = 10e-9 / (1 / 60 + 1 / 20_000);
    const held = 10e-9 / (1 / 60 + 1 / 20_000 + 1 / 45.54);
    const at = (time: number) => pattern.volts[0]![Math.round((time / 1e-4) * 256)]!;
    const [step, fall] = [100e-6 / 256, 1e-4];
    expect(at(step) / nominal).toBeCloseTo(1 - Math.exp(-step / held), 2);
    expect(at(fall + 2 * step) / nominal).toBeCloseTo(Math.exp((-2 * step) / released), 2);
  });

  it('says when a bit is too short for the line to settle', () => {
    const nanofarad = testDevice('Heavy', { kind: 'can', edge: seconds(10e-9), capacitance: farads(10e-9) });
    const built = busOf('can', { rate: 1e6 }).from('a', { device: nanofarad, terminate: 60 }).built();
    expect(waves(built, { driver: 0 }).stopped).toMatch(/ends before the line has settled/);
  });

  it('has at most the recessive threshold as its margin', () => {
    const { landings, threshold } = waves(chain(10, fast, 125_000, 'can'), { driver: 0 });
    for (const { margin } of landings) {
      expect(margin.nominal).toBeGreaterThan(0.45);
      expect(margin.high).toBeLessThanOrEqual(threshold.low);
    }
  });
});
