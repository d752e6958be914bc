import { describe, expect, it } from 'vitest';
import { isUnknown } from '../known.js';
import { chanceOf } from '../testing/chance.js';
import { type BuiltBus, busOf, headDevice, testDevice } from '../testing/network.js';
import { chain, fast, waves } from '../testing/waves.js';
import { busMargin, driversOf } from './bus-margin.js';

const namesOf = ({ bus, study }: BuiltBus) => driversOf(study).map((index) => bus.landings[index]!.name);

describe('drivers that are tried', () => {
  it('are the head, the ends, both sides of the longest taps and the middle, each once and no splice', () => {
    const bus = busOf('rs485', { rate: 9600 }).from('a', { terminate: 120 }).to('b', 5).tap('short', 1).to('c', 5);
    bus.tap('long', 9).to('d', 5, { device: headDevice }).to('box', 5, { splice: true }).tap('longer', 12);
    const built = bus.to('e', 5, { terminate: 120 }).built();
    expect(namesOf(built)).toEqual(['d', 'a', 'e', 'longer', 'c', 'long']);
  });

  it('are some of a shape that has no ends', () => {
    const star = busOf('rs485', { rate: 9600 }).from('a').to('b', 5).from('a').to('c', 5).from('a').to('d', 5).built();
    expect(namesOf(star)).toEqual(['a', 'b', 'c', 'd']);
  });
});

describe('the margin of a bus', () => {
  it('is the least of all receivers over the drivers', () => {
    const built = chain(6, fast, 1e6);
    const margin = busMargin(built.study);
    if (isUnknown(margin)) throw new Error(margin.unknown);
    const all = driversOf(built.study).flatMap((driver) =>
      waves(built, { driver, coarse: true }).landings.flatMap((one) =>
        one.landing === driver ? [] : { margin: one.margin.low, landing: one.landing, driver },
      ),
    );
    const least = all.reduce((worst, one) => (one.margin < worst.margin ? one : worst));
    expect(margin).toEqual(least);
  });

  it('is worse where the device at the foot of a long tap drives', () => {
    const device = testDevice('Sharp', { edge: 25e-9 as never });
    const bus = busOf('rs485', { rate: 250_000 }).from('a', { device, terminate: 120 }).to('foot', 15, { device });
    const { study, landing } = bus.tap('t', 20, { device }).to('b', 15, { device, terminate: 120 }).built();
    const margin = busMargin(study);
    expect(margin).toMatchObject({ driver: landing('foot').index, landing: landing('t').index });
  });

  it('leaves out islands, and is unknown where nothing is joined or a value is missing', () => {
    const bus = busOf('rs485', { rate: 9600 }).from('a', { terminate: 120 }).to('b', 5, { terminate: 120 });
    expect(busMargin(bus.from('island').built().study)).toHaveProperty('margin');
    const alone = busOf('rs485', { rate: 9600 }).from('a').from('b').built();
    expect(busMargin(alone.study)).toEqual({ unknown: 'the margin: no two devices are joined' });
    expect(busMargin(busOf('rs485').from('a').to('b', 5).built().study)).toEqual({ unknown: 'the rate of the bus' });
  });
});

describe('a coarse answer', () => {
  it('has the margins of the fine one to 2 % of the swing: 30 random chains', () => {
    let worst = 0;
    for (let seed = 1; seed <= 30; seed++) {
      const chance = chanceOf(seed);
      const device = testDevice('Any', { edge: (25e-9 + chance() * 200e-9) as never });
      const bus = busOf('rs485', { rate: 50_000 + 450_000 * chance() }).from('n0', { device, terminate: 120 });
      for (let index = 1; index < 6; index++) {
        bus.to(`n${index}`, chance() * 40, { device, ...(index === 5 && { terminate: 120 }) });
        if (chance() < 0.3) bus.tap(`t${index}`, chance() * 8, { device });
      }
      const built = bus.built();
      const coarse = waves(built, { driver: 0, coarse: true });
      for (const { landing, margin, level } of waves(built, { driver: 0 }).landings) {
        if (margin.low <= 0) continue;
        worst = Math.max(worst, Math.abs(margin.low - coarse.landings[landing]!.margin.low) / (2 * level.nominal));
      }
    }
    expect(worst).toBeLessThan(0.02);
    expect(worst).toBeGreaterThan(0);
  });
});
