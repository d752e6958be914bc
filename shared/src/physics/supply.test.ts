import { describe, expect, it } from 'vitest';
import { studyText } from '../../../language/src/testing/study-text.js';
import { isUnknown } from '../known.js';
import type { Supply } from './supply.js';

const supplyFrom = (cable: string, statements: string, draws = '0.5 A', supplies = '24 V dc within 5 %'): Supply => {
  const { supply } = studyText(`cable Wire { ${cable} }
device Source { port p : supply { supplies ${supplies} } }
device Load { port p : supply { draws ${draws} } }
device Dumb { port p : supply }
store s { bus b : supply on Wire { ${statements} } }
`);
  if (isUnknown(supply)) throw new Error(supply.unknown);
  return supply;
};
const one = (length: string) => `from a : Source ${length} to b : Load`;
const drop = (supply: Supply, landing = 1) => {
  const level = supply.volts[landing]!;
  return isUnknown(level) ? level.unknown : 24 - level.nominal;
};

describe('the voltage drop of published tables: V = 2 L I r', () => {
  it('of 60 m of 18 AWG stranded at 75 degC: NFPA 70 chapter 9 table 8, 7.95 ohm per 1000 ft', () => {
    expect(drop(supplyFrom('conductor 18 AWG stranded', `${one('60 m')} ambient 75 degC`))).toBeCloseTo(1.565, 1);
    // The table's own 7.95 ohm per 1000 ft at 75 degC is 6.537 at 20 degC by 0.00393 per kelvin (NBS Handbook 100).
    const stated = supplyFrom('conductor 18 AWG stranded resistance 6.537 ohm/kft', `${one('60 m')} ambient 75 degC`);
    expect(drop(stated)).toBeCloseTo(1.565, 3);
  });

  it('of 1 mm2 flexible: IEC 60228 class 5, at most 19.5 ohm/km', () => {
    expect(drop(supplyFrom('conductor 1 mm2 stranded resistance 19.5 ohm/km', one('60 m')))).toBeCloseTo(1.17, 6);
  });

  it.each([
    [18, 1620],
    [16, 2580],
    [14, 4110],
    [12, 6530],
    [10, 10_380],
  ])('of %i AWG: 2 K L I / cmil with K = 12.9 ohm cmil/ft at 75 degC, which is rounded by 2.5 %', (gauge, cmil) => {
    const expected = (2 * 12.9 * 200 * 0.5) / cmil;
    const found = drop(supplyFrom(`conductor ${gauge} AWG stranded`, `${one('200 ft')} ambient 75 degC`));
    expect(Number(found) / expected).toBeGreaterThan(0.975);
    expect(Number(found) / expected).toBeLessThan(1.025);
  });

  it('sums segment by segment', () => {
    // 10 ohm/km: 1 ohm out and back for 50 m; 1 A, then 0.5 A.
    const supply = supplyFrom(
      'conductor 1 mm2 solid resistance 10 ohm/km',
      'from a : Source 50 m to b : Load 50 m to c : Load',
    );
    expect([drop(supply, 1), drop(supply, 2)]).toEqual([expect.closeTo(1, 9), expect.closeTo(1.5, 9)]);
    expect(supply.amperes).toMatchObject([{ nominal: expect.closeTo(1, 9) }, { nominal: expect.closeTo(0.5, 9) }]);
    expect(supply.feeds[0]).toMatchObject({
      given: { nominal: expect.closeTo(1, 9), low: 0 },
      power: { nominal: expect.closeTo(24, 9) },
      // 1 A through 1 ohm and 0.5 A through 1 ohm.
      heat: { nominal: expect.closeTo(1.25, 9) },
    });
  });
});

describe('a supply', () => {
  const wire = 'conductor 1 mm2 solid resistance 10 ohm/km';

  it('is least with the source low, the cable 5 % up and at 50 degC, most with nothing drawn', () => {
    const [, level] = supplyFrom(wire, one('50 m')).volts;
    const warm = 1.05 * (1 + 0.00393 * 30);
    expect(level).toEqual({
      nominal: expect.closeTo(23.5, 9),
      low: expect.closeTo(22.8 - 0.5 * warm, 9),
      high: expect.closeTo(25.2, 9),
    });
  });

  it('keeps to the temperature that is said', () => {
    const [, level] = supplyFrom(wire, `${one('50 m')} ambient 20 degC`).volts;
    expect(level).toMatchObject({ low: expect.closeTo(22.8 - 0.5 * 1.05, 9) });
  });

  it.each([
    ['from b : Load 5 m to c : Load', 'what feeds it: no landing here is a source'],
    ['from a : Source 5 m to b : Source 5 m to c : Load', 'how a and b share the loads: both are sources'],
    ['from a : Source 5 m to b : Dumb', 'what b draws'],
  ])('says what is missing: %s', (statements, reason) => {
    expect(supplyFrom(wire, statements).volts[0]).toEqual({ unknown: reason });
  });

  it('says so where its cable is not known', () => {
    const { supply } = studyText(`device S { port p : supply { supplies 24 V } }
device L { port p : supply { draws 5 W } }
store s { bus b : supply { from a : S 5 m to b : L } }`);
    expect(!isUnknown(supply) && supply.volts[1]).toEqual({ unknown: 'the cable of the run from a to b' });
  });

  it('collapses where its loads ask for too much: always, or at the worst only', () => {
    // 1 ohm out and back: 24 V bring 144 W at most, 22.8 V over the warm cable 110 W.
    const feedOf = (draws: string) => supplyFrom(wire, one('50 m'), draws).feeds[0]!;
    expect(feedOf('150 W').collapses).toBe('always');
    expect(feedOf('120 W').collapses).toBe('at the worst');
    expect(feedOf('100 W').collapses).toBeUndefined();
  });

  it('feeds each of its parts from the source of that part', () => {
    const supply = supplyFrom(wire, 'from a : Source 50 m to b : Load from c : Source 100 m to d : Load');
    expect(supply.feeds.map(({ landing }) => landing.name)).toEqual(['a', 'c']);
    expect([drop(supply, 1), drop(supply, 3)]).toEqual([expect.closeTo(0.5, 9), expect.closeTo(1, 9)]);
  });
});
