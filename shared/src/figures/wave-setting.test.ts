import { describe, expect, it } from 'vitest';
import { isUnknown, type Unknown } from '../known.js';
import type { Fault } from '../physics/wave/fault.js';
import { bitsPerSecond, metres, ohms, ratio, seconds } from '../quantity.js';
import { chanceOf } from '../testing/chance.js';
import { type BuiltBus, busOf, testCable, testDevice } from '../testing/network.js';
import { anyBus, chain } from '../testing/waves.js';
import { type WaveQuestion, wavesOf } from './waves.js';

describe('a question that cannot be answered', () => {
  const unknown = (built: BuiltBus, question: Partial<WaveQuestion>) =>
    (wavesOf(built.study, { driver: 0, ...question }) as Unknown).unknown;
  it('is told what is missing', () => {
    const { study, ...rest } = chain(3);
    expect(unknown({ study, ...rest }, { driver: 7 })).toMatch(/driver/);
    expect(unknown({ study, ...rest }, { driver: Number.NaN })).toMatch(/driver/);
    expect(unknown({ study, ...rest }, { rate: bitsPerSecond(0) })).toMatch(/rate/);
    expect(unknown({ study, ...rest }, { rate: bitsPerSecond(Number.NaN) })).toMatch(/rate/);
    expect(unknown({ study, ...rest }, { pattern: '01x' })).toMatch(/pattern/);
    expect(unknown({ study, ...rest }, { faults: [{ kind: 'crossed', landing: 9 }] })).toMatch(/crossed/);
    expect(unknown(busOf('free-topology').from('a').built(), {})).toMatch(/free-topology/);
    expect(unknown(busOf(undefined).from('a').built(), {})).toMatch(/kind/);
    expect(unknown(busOf('rs485').from('a').built(), {})).toMatch(/rate/);
    expect(unknown(busOf('rs485', { rate: 9600, cable: null }).from('a').to('b', 3).built(), {})).toMatch(/from a/);
    const { impedance: _, ...bare } = testCable();
    const { capacitance: __, ...barer } = bare;
    expect(unknown(busOf('rs485', { rate: 9600, cable: barer }).from('a').to('b', 3).built(), {})).toMatch(/impedance/);
    const silent = testDevice('Silent', { unitLoad: undefined as never });
    expect(unknown(busOf('rs485', { rate: 9600 }).from('a', { device: silent }).built(), {})).toMatch(/Silent/);
  });
});

it('no bus, no question and no fault yields a number that is none: 50 random ones', () => {
  for (let seed = 1; seed <= 50; seed++) {
    const chance = chanceOf(seed + 1000);
    const built = anyBus(seed);
    const { runs, landings } = built.bus;
    const run = Math.floor(chance() * runs.length);
    const faults: Fault[] =
      runs.length === 0
        ? []
        : [
            { kind: 'open', run, at: ratio(chance() * 2 - 0.5) },
            { kind: 'short', run, at: ratio(chance()), resistance: ohms(chance() < 0.5 ? 0 : 1e9) },
            { kind: 'length', run, length: metres(chance() * 1000) },
            { kind: 'crossed', landing: Math.floor(chance() * landings.length) },
          ];
    const answer = wavesOf(built.study, {
      driver: Math.floor(chance() * landings.length),
      faults: faults.filter(() => chance() < 0.4),
      rate: bitsPerSecond(10 ** (chance() * 12 - 2)),
      ...(chance() < 0.5 && { edge: seconds(10 ** (-chance() * 9)) }),
      nominalOnly: chance() < 0.9,
    });
    if (isUnknown(answer)) throw new Error(answer.unknown);
    for (const row of [...answer.step.volts, ...answer.pattern.volts]) expect(row.every(Number.isFinite)).toBe(true);
    for (const { delay, settling, overshoot, level, margin, opening } of answer.landings) {
      for (const value of [delay, settling, overshoot, ...Object.values({ ...level }), margin.low, opening.high]) {
        expect(Number.isFinite(value)).toBe(true);
      }
    }
  }
});
