/**
 * Waveforms against ngspice (npm package `eecircuit-engine`): its lossy line LTRA solves the same telegraph equations
 * by convolution in time, which shares nothing with the transform used here. LTRA has no skin effect, so that it is
 * switched off for the comparison.
 */
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { isUnknown } from '../../shared/src/known.js';
import { asStated, WaveBus } from '../../shared/src/physics/wave/bus-circuit.js';
import { busWaves } from '../../shared/src/physics/wave/bus-waves.js';
import { celsius, volts as inVolts, ohms } from '../../shared/src/quantity.js';
import { largestDifference, withoutSkin } from './compare-waves.js';
import { drawnWave, netlistOf, sourceOf } from './drawn-waves.js';
import { distribution, Spice } from './spice.js';

/** Half a volt either way: a swing of 1 V without load. */
const driver = { open: inVolts(0.5), output: ohms(64.3) };
/** What waveforms may differ by, as a share of the driver's swing. */
const allowed = 0.02;

describe('waveforms against ngspice', () => {
  const spice = new Spice();
  const differences: number[] = [];
  beforeAll(() => spice.start());
  afterAll(() =>
    console.log(
      `worst difference at each of ${differences.length} landings, of the driver's swing: ${distribution(differences)}`,
    ),
  );

  const seeds = Array.from({ length: 200 }, (_, seed) => seed + 1);
  it.each(seeds)(
    'bus %i',
    async (seed) => {
      const drawn = drawnWave(seed);
      const { built, faults, driver: driving, edge, bits, bitTime } = drawn;
      const bus = WaveBus.of(built.bus, celsius(20), faults, driving);
      if (isUnknown(bus)) throw new Error(bus.unknown);
      vi.spyOn(bus, 'circuitAt').mockReturnValue(withoutSkin(bus.circuitAt(asStated)));
      const { signals, upright, settled } = busWaves(bus, asStated, driver, 'both bits', edge);
      expect(settled).toBe(true);

      const signOf = (landing: number) =>
        faults.some((fault) => fault.kind === 'crossed' && fault.landing === landing) ? -1 : 1;
      const own = signOf(driving);
      const { time, volts } = await spice.transient(
        [
          sourceOf(drawn, [-own * driver.open, own * driver.open]),
          `RS source n${driving} ${driver.output}`,
          ...netlistOf(drawn),
        ],
        { nodes: signals.length, step: edge / 6, stop: bits.length * bitTime },
      );
      const raised = Array.from(`0${bits}`, (bit) => bit === '1');
      let worst = 0;
      for (const [landing, signal] of signals.entries()) {
        // What bias gives behind a break is told as cut off, not as a wave.
        if (bus.nodes[landing] === -1) continue;
        expect(upright[landing]).toBe(signOf(landing) === own);
        const seen = { time, volts: volts[landing]!.map((value) => own * value) };
        const difference = largestDifference(raised, signal, bitTime, seen);
        differences.push(difference);
        worst = Math.max(worst, difference);
      }
      expect(worst).toBeLessThan(allowed);
    },
    60_000,
  );
});
