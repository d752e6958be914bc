/**
 * Waveforms against ngspice (npm package `eecircuit-engine`): its lossy line LTRA solves the same telegraph equations
 * by convolution in time, which shares nothing with the transform used here. LTRA has no skin effect, so that it is
 * switched off for the comparison.
 */
import { Simulation } from 'eecircuit-engine';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { isUnknown } from '../../shared/src/known.js';
import { waveOfBits } from '../../shared/src/physics/wave/bits.js';
import { WaveBus } from '../../shared/src/physics/wave/bus-circuit.js';
import { nominalWave } from '../../shared/src/physics/wave/corners.js';
import { edgePerSigma, stepResponse } from '../../shared/src/physics/wave/step-response.js';
import { celsius } from '../../shared/src/quantity.js';
import { drawnWave, netlistOf, sourceOf } from './drawn-waves.js';

const output = 64.3;
const samples = 256;
/** What waveforms may differ by, as a share of the driver's swing. */
const allowed = 0.02;

describe('waveforms against ngspice', () => {
  const simulation = new Simulation();
  const differences: number[] = [];
  beforeAll(async () => simulation.start());

  afterAll(() => {
    const sorted = differences.toSorted((left, right) => left - right);
    const at = (share: number) => `${(100 * sorted[Math.floor(share * (sorted.length - 1))]!).toFixed(3)} %`;
    console.log(
      `worst difference at each of ${sorted.length} landings, of the driver's swing: median ${at(0.5)}, 95th percentile ${at(0.95)}, worst ${at(1)}`,
    );
  });

  /** Points of every landing; it fails where the simulator did. */
  async function simulated(lines: readonly string[]): Promise<ReadonlyMap<string, readonly number[]>> {
    simulation.setNetList(['* waves', ...lines, '.end'].join('\n'));
    const result = await simulation.runSim();
    expect(result.data.length, simulation.getError().join('\n')).toBeGreaterThan(0);
    return new Map(result.data.map(({ name, values }) => [name.toLowerCase(), values.map(Number)]));
  }

  const seeds = Array.from({ length: 200 }, (_, seed) => seed + 1);
  it.each(seeds)(
    'bus %i',
    async (seed) => {
      const drawn = drawnWave(seed);
      const { built, faults, driver, edge, bits, bitTime } = drawn;
      const waveBus = WaveBus.of(built.bus, celsius(20), faults, driver);
      if (isUnknown(waveBus)) throw new Error(waveBus.unknown);
      const circuit = waveBus.circuitAt(nominalWave(edge).corner);
      const plain = { ...circuit, media: circuit.media.map((medium) => ({ ...medium, skin: false })) };
      const sigma = edge / edgePerSigma;
      const { start, spacing, rows, ends, settled } = stepResponse(plain, { conductance: 1 / output, sigma });
      expect(settled).toBe(true);

      const stop = bits.length * bitTime;
      const step = edge / 6;
      const points = await simulated([
        sourceOf(drawn),
        ...netlistOf(drawn, output),
        `.tran ${step} ${stop} 0 ${step}`,
        `.save time ${built.bus.landings.map(({ index }) => `v(n${index})`).join(' ')}`,
      ]);
      const time = points.get('time')!;
      expect(time.at(-1)).toBeGreaterThan(stop * 0.999);
      let worst = 0;
      for (const { index } of built.bus.landings) {
        const node = waveBus.nodes[index]!;
        const rise = { start, spacing, row: rows[node] ?? new Float64Array(0), end: ends[node] ?? 0 };
        const raised = Array.from(`0${bits}`, (bit) => bit === '1');
        const wave = waveOfBits(raised, { lower: 0, rise, fall: rise }, bitTime, samples);
        const volts = points.get(`v(n${index})`)!;
        let difference = 0;
        for (const [point, instant] of time.entries()) {
          const position = (instant / bitTime) * samples;
          const floor = Math.min(wave.length - 2, Math.floor(position));
          const ours = wave[floor]! + (position - floor) * (wave[floor + 1]! - wave[floor]!);
          difference = Math.max(difference, Math.abs(ours - volts[point]!));
        }
        differences.push(difference);
        worst = Math.max(worst, difference);
      }
      expect(worst).toBeLessThan(allowed);
    },
    60_000,
  );
});
