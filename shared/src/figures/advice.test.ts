import { describe, expect, it } from 'vitest';
import { isUnknown } from '../known.js';
import { bitsPerSecond, farads, metres, ohms, seconds } from '../quantity.js';
import { type BuiltBus, busOf, testDevice } from '../testing/network.js';
import { adviceText, type WaveAdvice, waveAdvice } from './advice.js';
import { healthyMargin } from './bus-margin.js';
import { type WaveQuestion, wavesOf } from './waves.js';

const device = testDevice('Any', { edge: seconds(30e-9), capacitance: farads(15e-12) });

function advice({ study }: BuiltBus, driver = 0): WaveAdvice {
  const answer = waveAdvice(study, driver);
  if (isUnknown(answer)) throw new Error(answer.unknown);
  return answer;
}

function leastMargin({ study }: BuiltBus, question: WaveQuestion): number {
  const waves = wavesOf(study, question);
  if (isUnknown(waves)) throw new Error(waves.unknown);
  return Math.min(...waves.landings.map(({ margin }) => margin.low));
}

const chain = (rate: number, far: number | undefined, tap = 0.2) => {
  const bus = busOf('rs485', { rate }).from('a', { device, terminate: 120 }).to('b', 40, { device });
  bus.tap('t', tap, { device }).to('c', 60, { device });
  return bus.to('d', 50, { device, ...(far !== undefined && { terminate: far }) }).built();
};

describe('advice on a sound bus', () => {
  const built = chain(115_200, 120);
  const { fastest, growth, cures, margin } = advice(built);

  it('has no cures, and a fastest rate beyond which the margin is thin', () => {
    expect(margin).toBeGreaterThan(healthyMargin);
    expect(cures).toEqual([]);
    expect(leastMargin(built, { driver: 0, rate: fastest! })).toBeGreaterThanOrEqual(healthyMargin);
    expect(fastest).toBeGreaterThanOrEqual(115_200);
  });

  it('tells how far it may grow: there the margin is healthy, or the document says stop', () => {
    const at = (longer: number) =>
      leastMargin(built, { driver: 0, faults: [{ kind: 'length', run: 3, length: metres(50 + longer) }] });
    expect(at(growth!.length)).toBeGreaterThanOrEqual(healthyMargin);
    if (growth!.stoppedBy.startsWith('the margin')) {
      expect(at(growth!.length + 10)).toBeLessThan(healthyMargin);
    } else expect(growth!.length).toBeGreaterThan(100);
  });

  it('offers only rates that every port can be set to', () => {
    const slow = testDevice('Slow', { rates: [bitsPerSecond(9600), bitsPerSecond(19_200)] });
    const bus = busOf('modbus-rtu', { rate: 9600 }).from('a', { device: slow, terminate: 120 });
    expect(advice(bus.to('b', 30, { device: slow, terminate: 120 }).built()).fastest).toBe(19_200);
  });
});

it('advises no rate at which CAN could not answer within a bit', () => {
  const node = testDevice('Node', { kind: 'can', resistance: ohms(30_000), delay: seconds(250e-9) });
  const line = (length: number) =>
    busOf('can', { rate: 125_000 })
      .from('a', { device: node, terminate: 120 })
      .to('b', length, { device: node, terminate: 120 })
      .built();
  // CiA 301 and 102: 1 Mbit/s up to 25 m, 250 kbit/s up to 250 m; levels alone would allow far more on both.
  expect(advice(line(20)).fastest).toBe(1e6);
  const long = line(120);
  expect(advice(long).fastest).toBe(250_000);
  expect(leastMargin(long, { driver: 0, rate: bitsPerSecond(1e6) })).toBeGreaterThanOrEqual(healthyMargin);
  expect(adviceText(long.study, advice(long))[0]).toMatch(
    /^By its waveforms, its length and its slowest answer, 250,000 /,
  );
});

describe('advice on a bus with a fault', () => {
  it('puts the missing terminator first, then a slower rate, and the terminator does cure it', () => {
    const built = chain(2e6, undefined);
    const { cures, margin } = advice(built);
    expect(margin).toBeLessThan(healthyMargin);
    expect(cures[0]).toBe('one terminator of 120 ohm at d');
    expect(cures[1]).toMatch(/^a rate of [\d,]+ bit\/s$/);
    const due = { kind: 'terminators' as const, landing: 4, terminations: [{ resistance: ohms(120) }] };
    expect(leastMargin(built, { driver: 0, faults: [due] })).toBeGreaterThanOrEqual(healthyMargin);
  });

  it('names the tap that is too long', () => {
    const { cures } = advice(chain(5e6, 120, 15));
    expect(cures).toContain('a tap of at most 0.3 m to t');
  });

  it('reads as sentences', () => {
    const built = chain(2e6, undefined);
    const lines = adviceText(built.study, advice(built));
    expect(lines[0]).toMatch(
      /^By its waveforms, [\d,]+ bit\/s is the fastest usual rate that leaves bus tested a healthy margin/,
    );
    expect(lines[1]).toBe('What mends its margin at the least cost is one terminator of 120 ohm at d.');
    expect(lines[2]).toMatch(/^Each of these alone would do too, the cheaper ones first: a rate of .*\.$/);
  });

  it('takes out what stands between the ends before it buys anything', () => {
    const { study } = busOf('modbus-rtu', { rate: 2e6 })
      .from('a', { device, terminate: 120 })
      .to('b', 30, { device, terminate: 22 })
      .to('c', 30, { device, terminate: 120 })
      .built();
    const advised = waveAdvice(study, 0);
    expect(isUnknown(advised) ? advised : advised.cures[0]).toBe('no terminator at b');
  });

  it('says what is missing instead of guessing', () => {
    const { study } = busOf('rs485').from('a').built();
    expect(waveAdvice(study, 0)).toEqual({ unknown: 'the rate of the bus' });
  });
});
