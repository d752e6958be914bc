/**
 * Waveforms of CAN against ngspice. A CAN driver drives one bit and lets go for the other, so that the line has another
 * load in each. The simulator has a driver whose resistance comes and goes, and solves the pattern in time; we add up
 * steps with and without that resistance.
 *
 * Two makes of driver: one with the edge that is ours (voltage behind the resistance rises; the resistance goes, and its
 * current fades), which has to agree; and one that is nothing but a conductance that comes and goes, as a transistor's
 * does, which shows how much the make of the edge matters. Where waves come back while it changes, they meet another load.
 */
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { isUnknown } from '../../shared/src/known.js';
import { asStated, WaveBus } from '../../shared/src/physics/wave/bus-circuit.js';
import { busWaves } from '../../shared/src/physics/wave/bus-waves.js';
import { signallingOf } from '../../shared/src/physics/wave/drive.js';
import { lastLeaving } from '../../shared/src/physics/wave/resample.js';
import { edgePerSigma } from '../../shared/src/physics/wave/step-response.js';
import { celsius } from '../../shared/src/quantity.js';
import { chanceOf } from '../../shared/src/testing/chance.js';
import { type BuiltBus, busOf, testCable, testDevice } from '../../shared/src/testing/network.js';
import { largestDifference, withoutSkin } from './compare-waves.js';
import { netlistOf, sourceOf } from './drawn-waves.js';
import { distribution, Spice } from './spice.js';

const driver = signallingOf('can')!.drivers.usual;
const impedance = 120;
/** What waveforms may differ by, as a share of the driver's swing. */
const allowed = { ours: 0.02, conductance: 0.06 };
/** A bit lasts until this share of the swing is left of the last one. */
const atRest = 0.005;
/**
 * Edges. A bus that rings on for longer is left out: the simulator, in steps large enough to wait for, is a little wrong
 * at each of the many reflections.
 */
const longestRest = 60;

interface DrawnCan {
  readonly built: BuiltBus;
  readonly driving: number;
  readonly edge: number;
}

/** A line with drops: sound, without one terminator or both, with a wrong or a third one. The same for the same seed. */
function drawnCan(seed: number): DrawnCan {
  const chance = chanceOf(seed);
  const among = (low: number, high: number) => low + chance() * (high - low);
  const resistance = among(0.02, 0.07) as never;
  const node = () => {
    const port = { kind: 'can', resistance: among(20_000, 50_000), capacitance: among(20e-12, 100e-12) } as never;
    return { device: testDevice('Node', port) };
  };
  const ends = [
    [120, 120],
    [120, undefined],
    [undefined, 120],
    [120, 60],
    [124, 124],
  ] as const;
  const [near, far] = ends[seed % ends.length]!;
  const count = 2 + Math.floor(chance() * 5);
  const bus = busOf('can', { cable: testCable({ impedance: impedance as never, resistance }) });
  bus.from('n0', { ...node(), ...(near && { terminate: near }) });
  const length = among(60, 300) / count;
  for (let index = 1; index < count; index++) {
    if (chance() < 0.5) bus.tap(`t${index}`, among(3, 8), node());
    const third = seed % 7 === 0 && index === 1 && { terminate: 120 };
    bus.to(`n${index}`, among(length / 2, length), {
      ...node(),
      ...third,
      ...(index === count - 1 && far && { terminate: far }),
    });
  }
  const built = bus.built();
  const travel = built.bus.runs.reduce((sum, run) => sum + run.length, 0) / (0.66 * 299_792_458);
  // Edges that are long against the simulator's error at each of many reflections.
  return { built, driving: Math.floor(chance() * built.bus.landings.length), edge: among(0.25, 0.6) * travel };
}

/** What we make of it, without the skin effect, and how long a bit has to be. */
function waved(seed: number) {
  const { built, driving, edge } = drawnCan(seed);
  const bus = WaveBus.of(built.bus, celsius(20), [], driving);
  if (isUnknown(bus)) throw new Error(bus.unknown);
  vi.spyOn(bus, 'circuitAt').mockReturnValue(withoutSkin(bus.circuitAt(asStated)));
  const { signals, settled } = busWaves(bus, asStated, driver, 'dominant bit', edge);
  if (!settled) throw new Error('the bus does not come to rest');
  const swing = Math.max(...signals.map(({ rise }) => rise.end));
  const rests = signals.flatMap(({ rise, fall }) => [rise, fall].map((one) => lastLeaving(one, atRest * swing)));
  return { seed, built, driving, edge, bitTime: Math.max(...rests) + 2 * edge, signals };
}

/** 0 is dominant. The driver lets go for one bit and for several, and drives again after one and after several. */
const bits = '1011001';
const dominantFirst = bits.replaceAll(/./g, (bit) => (bit === '0' ? '1' : '0'));

/** Drivers at a node, in the simulator's words; node `source` goes from 0 to 1 by the edges of dominant bits. */
const drivers = {
  /** `hold` is the current that flows when it lets go. */
  ours(node: string, bitTime: number, edge: number, hold: number): string[] {
    const sigma = edge / edgePerSigma;
    const changes = ['0 0'];
    for (let bit = 1; bit < bits.length; bit++) {
      if (bits[bit] === bits[bit - 1]) continue;
      const begins = bit * bitTime - 4 * sigma;
      changes.push(`${begins} ${bits[bit - 1] === '0' ? 1 : 0} ${begins + sigma / 50} ${bits[bit] === '0' ? 1 : 0}`);
    }
    return [
      `Von on 0 PWL(${changes.join(' ')})`,
      `B1 0 ${node} I=V(on)*(V(source)*${driver.open}-V(${node}))/${driver.output}+(1-V(on))*V(source)*${hold}`,
    ];
  },
  /** So that it gives a Gaussian edge into a resistance of `load`. */
  conductance: (node: string, load: number): string[] => [
    `B1 0 ${node} I=V(source)/(${driver.output}+${load}*(1-V(source)))*(${driver.open}-V(${node}))`,
  ],
};

describe('CAN waveforms against ngspice', () => {
  const spice = new Spice();
  const differences = { ours: [] as number[], conductance: [] as number[] };
  beforeAll(() => spice.start());
  afterAll(() => {
    for (const [make, all] of Object.entries(differences)) {
      console.log(
        `${make}: worst difference at each of ${all.length} landings, of the driver's swing: ${distribution(all)}`,
      );
    }
  });

  const drawn = Array.from({ length: 30 }, (_, index) => waved(index + 1));
  it.each(drawn.filter(({ bitTime, edge }) => bitTime < longestRest * edge))(
    'bus $seed',
    async ({ built, driving, edge, bitTime, signals }) => {
      const raised = Array.from(`1${bits}`, (bit) => bit === '0');
      const compare = async (make: keyof typeof drivers, lines: readonly string[]) => {
        const { time, volts } = await spice.transient(
          [
            sourceOf({ bits: dominantFirst, bitTime, edge }, [0, 1]),
            ...lines,
            ...netlistOf({ built, faults: [] }, 'REL=2'),
          ],
          { nodes: signals.length, step: edge / 10, stop: bits.length * bitTime },
        );
        const apart = signals.map(
          (signal, landing) =>
            largestDifference(raised, signal, bitTime, { time, volts: volts[landing]! }) / driver.open,
        );
        differences[make].push(...apart);
        expect(Math.max(...apart), make).toBeLessThan(allowed[make]);
      };

      const hold = (driver.open - signals[driving]!.rise.end) / driver.output;
      await compare('ours', drivers.ours(`n${driving}`, bitTime, edge, hold));
      const { landings } = built.bus;
      const { runs, terminations } = landings[driving]!;
      if (landings.filter((one) => one.terminations.length).length < 2) return;
      const load =
        1 / (runs.length / impedance + terminations.reduce((sum, { resistance }) => sum + 1 / resistance, 0));
      await compare('conductance', drivers.conductance(`n${driving}`, load));
    },
    60_000,
  );
});
