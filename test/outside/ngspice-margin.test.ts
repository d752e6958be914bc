/**
 * The number that margin-low tells, against ngspice driving bits: our margin comes from one step and a bound over all
 * patterns (see eye.ts). Here the very pattern that the bound says is worst is driven, bit by bit, by the least driver, on
 * a bus whose every value is at the end of its tolerance; the receiver takes its time from its own start bit, and what is
 * left of the level in its sampling window is read off. No other pattern that is tried leaves less.
 *
 * The simulator's lines have no skin effect, so that it is switched off in ours.
 */
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { busMargin } from '../../shared/src/figures/bus-margin.js';
import { isUnknown, type Range } from '../../shared/src/known.js';
import type { Bus, Cable } from '../../shared/src/network.js';
import { waveOfBits } from '../../shared/src/physics/wave/bits.js';
import { WaveBus, type WaveCorner } from '../../shared/src/physics/wave/bus-circuit.js';
import { busWaves } from '../../shared/src/physics/wave/bus-waves.js';
import { extremeWaves } from '../../shared/src/physics/wave/corners.js';
import { type DriverGrade, signallingOf } from '../../shared/src/physics/wave/drive.js';
import { firstReaching, resampled, type Sampled } from '../../shared/src/physics/wave/resample.js';
import { samplingOf } from '../../shared/src/physics/wave/sampling.js';
import { celsius, ohms, ohmsPerMetre } from '../../shared/src/quantity.js';
import { chanceOf } from '../../shared/src/testing/chance.js';
import { type BuiltBus, busOf, testCable, testDevice } from '../../shared/src/testing/network.js';
import { withoutSkin } from './compare-waves.js';
import { netlistOf, sourceOf } from './drawn-waves.js';
import { Spice } from './spice.js';

const threshold = 0.2;
/** What margins may differ by, as a share of the driver's swing. */
const allowed = 0.01;
const { drivers } = signallingOf('rs485')!;
const spice = new Spice();
const told: string[] = [];

const cable = (impedance = 120) => testCable({ impedance: impedance as never, resistance: 0.053 as never });
const device = (edge: number, capacitance = 30e-12) =>
  testDevice('Any', { edge: edge as never, capacitance: capacitance as never, unitLoad: 0.25 });

/** Buses whose margin is thin for different reasons. */
const buses: Readonly<Record<string, () => BuiltBus>> = {
  'no terminator at the far end': () => chain(600_000, { far: undefined }),
  'a third terminator': () => chain(1e6, { middle: 120 }),
  'terminators of half the impedance': () => chain(1e6, { near: 60, far: 60 }),
  'long taps': () => chain(1e6, { tap: 15 }),
  'heavy ports': () => chain(500_000, { capacitance: 3e-9 }),
  'another cable in the middle': () => chain(2e6, { impedance: 75 }),
};

interface Words {
  readonly near?: number;
  readonly far?: number | undefined;
  readonly middle?: number;
  readonly tap?: number;
  readonly capacitance?: number;
  readonly impedance?: number;
}

function chain(rate: number, words: Words): BuiltBus {
  const { near = 120, middle, tap, capacitance, impedance = 120 } = words;
  const far = 'far' in words ? words.far : 120;
  const on = { device: device(0.15 / rate, capacitance) };
  const bus = busOf('rs485', { rate, cable: cable() }).from('n0', { ...on, terminate: near });
  bus
    .to('n1', 30, on)
    .to('n2', 25, { ...on, cable: cable(impedance), ...(middle !== undefined && { terminate: middle }) });
  if (tap !== undefined) bus.tap('t', tap, on);
  return bus.to('n3', 30, { ...on, ...(far !== undefined && { terminate: far }) }).built();
}

/** The bus with every value where a corner has it; what a cable states counts to 5 % (shared/src/physics/tolerance.ts). */
function atCorner({ bus, ...built }: BuiltBus, corner: WaveCorner): BuiltBus {
  const wire = { nominal: 1, low: 0.95, high: 1.05 }[corner.wires];
  const cables = new Map<Cable, Cable>();
  const changed = (one: Cable): Cable => {
    const known = cables.get(one) ?? {
      ...one,
      impedance: ohms(one.impedance! * corner.impedance),
      resistance: ohmsPerMetre(one.resistance! * wire),
    };
    cables.set(one, known);
    return known;
  };
  const cornered: Bus = {
    ...bus,
    runs: bus.runs.map((run) => ({ ...run, cable: changed(run.cable!) })),
    landings: bus.landings.map((landing) => ({
      ...landing,
      port: { ...landing.port!, unitLoad: Math.max(1e-6, landing.port!.unitLoad! * corner.load) },
      terminations: landing.terminations.map((one) => ({
        ...one,
        resistance: ohms(one.resistance * corner.terminator),
      })),
    })),
  };
  return { ...built, bus: cornered };
}

/** More bits than these before the one that is looked at would keep the simulator too long. */
const mostMemory = 60;
const samples = 128;

/** An idle line, a start bit, and bits that leave least of a 1 among them, the last but one, at a share of that bit. */
function patternAgainst(rise: Sampled, bitTime: number, share: number): string {
  const memory = Math.min(mostMemory, Math.ceil((rise.row.length * rise.spacing) / bitTime) + 2);
  const arrival = firstReaching(rise, rise.end / 2)!;
  const bits = Array.from({ length: memory + 3 }, () => '1');
  bits[1] = '0';
  const own = memory + 1;
  for (let bit = 2; bit < bits.length; bit++) {
    if (bit === own) continue;
    const [now, before] = resampled(rise, arrival + (own - bit + share) * bitTime, -bitTime, 2);
    bits[bit] = 0 < now! - before! ? '0' : '1';
  }
  return bits.join('');
}

/** Of the patterns against each instant of the sampling window, the one that leaves least there. */
function worstPattern(rise: Sampled, bitTime: number, { low, high }: Range<number>): string {
  const arrival = firstReaching(rise, rise.end / 2)! / bitTime;
  let [worst, least] = ['', Number.POSITIVE_INFINITY];
  for (let step = 0; step <= 32; step++) {
    const share = low + ((high - low) * step) / 32;
    const bits = patternAgainst(rise, bitTime, share);
    const raised = Array.from(bits, (bit) => bit === '1');
    const wave = waveOfBits(raised, { lower: -rise.end / 2, rise, fall: rise }, bitTime, samples);
    const level = wave[Math.round((arrival + bits.length - 3 + share) * samples)]!;
    if (level < least) [worst, least] = [bits, level];
  }
  return worst;
}

interface Driving {
  readonly bits: string;
  readonly grade: DriverGrade;
  readonly driver: number;
  readonly landing: number;
  readonly edge: number;
}

/** What the simulator leaves of the last bit but one, in the whole sampling window, beyond the threshold. */
async function driven(built: BuiltBus, { bits, grade, driver, landing, edge }: Driving): Promise<number> {
  const bitTime = 1 / built.bus.rate!.value;
  const { open, output } = drivers[grade];
  const lines = [
    sourceOf({ bits, bitTime, edge }, [-open, open]),
    `RS source n${driver} ${output}`,
    ...netlistOf({ built, faults: [] }),
  ];
  const stop = bits.length * bitTime;
  const { time, volts } = await spice.transient(lines, { nodes: built.bus.landings.length, step: edge / 10, stop });
  const level = volts[landing]!;
  const at = (moment: number) => {
    const after = time.findIndex((one) => moment <= one);
    const share = (moment - time[after - 1]!) / (time[after]! - time[after - 1]!);
    return level[after - 1]! + share * (level[after]! - level[after - 1]!);
  };
  // The border between the idle bit and the start bit is at one bit's time.
  const after = time.findIndex((moment, point) => bitTime / 2 < moment && level[point]! <= 0);
  const [above, below] = [level[after - 1]!, level[after]!];
  const arrival = time[after - 1]! + (above / (above - below)) * (time[after]! - time[after - 1]!);
  const { low, high } = samplingOf(built.bus);
  const memory = bits.length - 3;
  const window = Array.from(
    { length: 65 },
    (_, point) => arrival + (memory + low + ((high - low) * point) / 64) * bitTime,
  );
  return Math.min(...window.map(at)) - threshold;
}

describe('the margin of a bus against ngspice', () => {
  beforeAll(async () => {
    const { circuitAt } = WaveBus.prototype;
    vi.spyOn(WaveBus.prototype, 'circuitAt').mockImplementation(function (this: WaveBus, corner) {
      return withoutSkin(circuitAt.call(this, corner));
    });
    await spice.start();
  });
  afterAll(() => {
    vi.restoreAllMocks();
    console.log(told.join('\n'));
  });

  it.each(Object.entries(buses))(
    '%s',
    async (name, draw) => {
      const built = draw();
      const ours = busMargin(built.study);
      if (isUnknown(ours)) throw new Error(ours.unknown);
      const { driver, landing } = ours;
      const edge = built.bus.landings[driver]!.port!.edge!;
      const bitTime = 1 / built.bus.rate!.value;
      const waveBus = WaveBus.of(built.bus, celsius(20), [], driver);
      if (isUnknown(waveBus)) throw new Error(waveBus.unknown);
      const chance = chanceOf(7);
      let [least, leastOfOthers] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
      for (const { corner, driver: grade } of extremeWaves([edge], 'both bits')) {
        const cornered = atCorner(built, corner);
        const { rise } = busWaves(waveBus, corner, drivers[grade], 'both bits', edge).signals[landing]!;
        const driving = { grade, driver, landing, edge };
        const bits = worstPattern(rise, bitTime, samplingOf(built.bus));
        least = Math.min(least, await driven(cornered, { bits, ...driving }));
        const random = Array.from({ length: 11 }, () => (chance() < 0.5 ? '1' : '0')).join('');
        leastOfOthers = Math.min(leastOfOthers, await driven(cornered, { bits: `10${random}10`, ...driving }));
      }
      const swing = 2 * drivers.least.open;
      const difference = Math.abs(least - ours.margin) / swing;
      told.push(
        `${name}: ours ${ours.margin.toFixed(3)} V, driven ${least.toFixed(3)} V, other patterns ${leastOfOthers.toFixed(3)} V; ${(100 * difference).toFixed(2)} % of the swing apart`,
      );
      expect(difference).toBeLessThan(allowed);
      expect(leastOfOthers).toBeGreaterThan(ours.margin - allowed * swing);
    },
    60_000,
  );
});
