/**
 * Waves of buses that nobody would build: whatever is claimed of cables, terminators, ports and rates, every number that
 * comes out is one, nothing throws, and what cannot be told says why.
 */
import {
  adviceText,
  type BusStudy,
  isUnknown,
  marginsOf,
  type Waves,
  waveAdvice,
  waveNotes,
  waveRecord,
  waveRow,
  waveSummary,
  wavesOf,
} from '@fieldpair/shared';
import { drawWaves, plotOf } from '@fieldpair/shared/plot';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BuiltBus, busOf, testCable, testDevice } from '../../../shared/src/testing/network.js';
import { waveText } from '../cli/formats/wave-text.js';
import { waveCsv } from './wave-csv.js';

/** Every number in plain data, with where it is. */
function* numbersIn(value: unknown, path: string): Generator<readonly [string, number]> {
  if (typeof value === 'number') yield [path, value];
  else if (value instanceof Float64Array) for (const [index, one] of value.entries()) yield [`${path}[${index}]`, one];
  else if (value !== null && typeof value === 'object') {
    for (const [key, one] of Object.entries(value)) yield* numbersIn(one, `${path}.${key}`);
  }
}

const noNumber = /NaN|Infinity|undefined|null/;

function expectNumbers(value: unknown): void {
  for (const [path, number] of numbersIn(value, ''))
    if (!Number.isFinite(number)) throw new Error(`${path}: ${number}`);
}

/** Waves in every form that people and programs get. */
function expectSound(study: BusStudy, waves: Waves): void {
  expectNumbers(waves);
  expectNumbers(waveRecord(study, waves));
  const words = [waveSummary(waves), ...waveNotes(waves), ...waves.landings.flatMap(waveRow)];
  for (const kind of ['step', 'pattern'] as const) {
    words.push(waveText({ heading: 'tested', waves, kind }, { colour: false }), waveCsv([{ name: '', waves }], kind));
  }
  for (const view of ['step', 'pattern', 'eye'] as const) {
    const size = { width: 600, height: 300, prefix: 'x' };
    words.push(drawWaves(plotOf(waves, { view, heading: 'tested', subject: 'tested', ...size })).svg);
  }
  for (const text of words) expect(text).not.toMatch(noNumber);
}

const lengths = [0, 1e-12, 1e-4, 1, 40, 1000, 1e8];
const resistances = [0, 1e-15, 1, 120, 1e15];
const capacitances = [0, 1e-15, 1e-9, 1];
/** Mostly some value. */
const optional = <T>(values: readonly T[]) => fc.option(fc.constantFrom(...values), { nil: undefined, freq: 6 });
const withoutUndefined = <T extends object>(value: T) =>
  Object.fromEntries(Object.entries(value).filter(([, one]) => one !== undefined)) as never;

const cable = fc
  .record({
    resistance: optional([0, 1e-12, 0.05, 1e9]),
    impedance: optional([1e-9, 120, 1e12]),
    capacitance: optional([0, 45e-12, 1e3]),
    velocity: optional([1e-9, 0.66, 1]),
  })
  .map((words) => testCable(withoutUndefined({ impedance: undefined, ...(words as object) })));
const device = fc
  .record({
    unitLoad: fc.constantFrom(0, 0.125, 1, 1e9),
    resistance: optional([0, 20_000, 1e12]),
    capacitance: optional(capacitances),
    edge: optional([0, 1e-18, 1e-7, 1e3]),
  })
  .map((port) => testDevice('Any', withoutUndefined(port)));
const place = { file: '', start: 0, end: 0 };
const terminator = fc
  .record({ resistance: fc.constantFrom(...resistances), capacitance: optional(capacitances) })
  .map((words) => ({ means: 'resistor', place, ...(withoutUndefined(words) as object) }));
const landing = fc.record({
  device,
  cable: fc.oneof({ weight: 3, arbitrary: fc.constant(testCable()) }, { weight: 1, arbitrary: cable }),
  crossed: fc.boolean(),
  splice: fc.boolean(),
  terminate: fc.array(terminator, { maxLength: 2 }) as never,
});
const step = fc.record({
  how: fc.constantFrom('to', 'to', 'tap', 'loose', 'from'),
  /** A landing, often one that is there: rings, runs back to themselves, rings within rings. */
  which: fc.nat(7),
  length: fc.constantFrom(...lengths),
  words: landing,
});
const bus = fc
  .record({
    kind: fc.oneof(
      { weight: 4, arbitrary: fc.constantFrom('rs485', 'modbus-rtu', 'can', 'bacnet-mstp') },
      { weight: 1, arbitrary: fc.constantFrom('free-topology', 'ethernet', 'supply', 'contact-loop', undefined) },
    ),
    rate: optional([1e-9, 1, 9600, 1e6, 1e12, 0]),
    first: landing,
    steps: fc.array(step, { maxLength: 9 }),
    bias: optional([0, 560, 1e12]),
    supply: fc.constantFrom(0, 5, 1e6),
  })
  .map(({ kind, rate, first, steps, bias, supply }) => {
    const built = busOf(kind as never, rate === undefined ? {} : { rate });
    built.from('n0', first as never);
    for (const { how, which, length, words } of steps) {
      if (how === 'from') built.from(`n${which}`, words as never);
      else if (how === 'loose') built.loose(length);
      else built[how as 'to' | 'tap'](`n${which}`, length, words as never);
    }
    if (bias !== undefined) built.bias('n0', bias, bias, supply);
    return built.built();
  });

const question = fc
  .record({
    rate: optional([1e-9, 1, 1e6, 1e12, 9600, Number.NaN]),
    edge: optional([1e-18, 1e-7, 1e3, Number.NaN, 0]),
    pattern: optional(['0', '1', '01', '1101001110001011111000001', '']),
    samples: optional([0, 4, 1e9, Number.NaN]),
  })
  .map(withoutUndefined);

const told = ({ study }: BuiltBus, driver: number, more: object) => wavesOf(study, { driver, ...more });

describe('waves of any bus', () => {
  it('are numbers or a reason, in every form', () => {
    let known = 0;
    fc.assert(
      fc.property(bus, question, fc.nat(9), (built, asked, driver) => {
        const waves = told(built, driver, asked);
        for (const margin of marginsOf(built.study, driver)) expectNumbers(margin);
        if (isUnknown(waves)) {
          expect(waves.unknown).not.toMatch(noNumber);
          return;
        }
        known++;
        expectSound(built.study, waves);
      }),
      { numRuns: 50 },
    );
    expect(known).toBeGreaterThan(5);
  }, 120_000);

  it('have advice that is numbers or a reason', () => {
    fc.assert(
      fc.property(bus, fc.nat(9), (built, driver) => {
        const advice = waveAdvice(built.study, driver);
        if (isUnknown(advice)) return;
        expectNumbers(advice);
        expect(adviceText(built.study, advice).join('\n')).not.toMatch(noNumber);
      }),
      { numRuns: 8 },
    );
  }, 120_000);
});

describe('waves of a bus', () => {
  const sound = (built: BuiltBus, more: object = {}) => {
    const waves = told(built, 0, more);
    if (isUnknown(waves)) throw new Error(waves.unknown);
    expectSound(built.study, waves);
    return waves;
  };

  it('of one landing, with and without a terminator', () => {
    expect(sound(busOf('rs485', { rate: 9600 }).from('n0').built()).landings).toHaveLength(1);
    sound(busOf('can', { rate: 9600 }).from('n0', { terminate: 120 }).built());
  });

  it('of 5,000 landings', () => {
    const built = busOf('rs485', { rate: 9600 }).from('n0', { terminate: 120 });
    for (let index = 1; index < 5000; index++) built.to(`n${index}`, 1);
    const waves = told(built.built(), 0, { nominalOnly: true, pattern: '01' });
    if (isUnknown(waves)) throw new Error(waves.unknown);
    expect(waves.landings).toHaveLength(5000);
    expectNumbers(waves.landings);
    expect(waveText({ heading: 'tested', waves, kind: 'pattern' }, { colour: false })).not.toMatch(noNumber);
  });

  it('of rings within rings: as many as are solved, or why not', () => {
    for (const rings of [3, 200]) {
      const built = busOf('rs485', { rate: 9600 }).from('n0', { terminate: 120 });
      for (let index = 1; index <= rings; index++) built.to(`n${index}`, 3).tap(`n${index >> 1}`, 5);
      const waves = told(built.built(), 0, { nominalOnly: true });
      if (isUnknown(waves)) expect(waves.unknown).toMatch(/loops/);
      else expectNumbers(waves);
    }
  });

  it('that never comes to rest says when it was left', () => {
    const cable = testCable({ resistance: 0 as never });
    const device = testDevice('None', { unitLoad: 0, edge: 1e-9 as never });
    const built = busOf('rs485', { rate: 1e6, cable }).from('n0', { device }).to('n1', 1000, { device }).built();
    expect(sound(built, { pattern: '01' }).landings).toHaveLength(2);
  });
});
