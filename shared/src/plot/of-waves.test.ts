import { describe, expect, it } from 'vitest';
import { isUnknown } from '../figures/study.js';
import { type WaveQuestion, type Waves, wavesOf } from '../figures/waves.js';
import { seconds } from '../quantity.js';
import { busOf, headDevice } from '../testing/network.js';
import { eyePattern, plotOf, readoutOf, usualLandings } from './of-waves.js';
import { drawWaves } from './plot.js';

const { study } = busOf('modbus-rtu', { rate: 115_200 })
  .from('head', { device: headDevice, terminate: 120 })
  .to('near', 20)
  .to('middle', 200)
  .to('beside', 2)
  .to('far', 200, { terminate: 120 })
  .built();

function known(question: Partial<WaveQuestion> = {}): Waves {
  const waves = wavesOf(study, { driver: 0, edge: seconds(200e-9), ...question });
  if (isUnknown(waves)) throw new Error(waves.unknown);
  return waves;
}
const waves = known();
const choices = { subject: 'testStore, bus tested', width: 800, height: 400, prefix: 'p' } as const;

it('the eye sees every group of seven bits but seven zeros, each once in a round', () => {
  // A sequence of greatest length of a register of 7 bits has all 2^7 - 1 states (Golomb, Shift Register Sequences).
  const groups = Array.from({ length: 127 }, (_, index) => eyePattern.slice(index, index + 7));
  expect(new Set(groups).size).toBe(127);
  expect(groups).not.toContain('0000000');
});

describe('what is drawn unless somebody chooses', () => {
  it('are the driver, the worst landing and others far from these, in the order of the bus', () => {
    expect(usualLandings(waves)).toEqual(['head', 'middle', 'far']);
  });

  it('leaves out landings that are cut off', () => {
    const cut = known({ faults: [{ kind: 'open', run: 1, at: 0.5 as never }] });
    expect(usualLandings(cut)).toEqual(['head', 'near']);
  });
});

describe('a plot of waves', () => {
  it('begins its bits at time 0, behind the one that was there before', () => {
    const plot = plotOf(waves, { ...choices, view: 'pattern' });
    expect(plot.bits).toBe(waves.pattern.bits.slice(1));
    expect(plot.curves.map(({ name }) => name)).toEqual(['head', 'middle', 'far']);
    expect(plot.curves[2]!.delay).toBeCloseTo(422 / (0.66 * 299_792_458), 6);
    expect(plot.description).toContain('The least margin is');
  });

  it('draws the chosen landings, and passes over names that the bus does not have', () => {
    const plot = plotOf(waves, { ...choices, view: 'step', landings: ['beside', 'nobody'] });
    expect(plot.curves.map(({ name }) => name)).toEqual(['beside']);
  });

  it('goes on at the level of rest until the slower of two steps ends', () => {
    const slow = known({ faults: [{ kind: 'terminators', landing: 4, terminations: [] }] });
    const plot = plotOf(waves, {
      ...choices,
      view: 'step',
      changed: { waves: slow, name: 'open', written: 'as written' },
    });
    for (const { samples, changed } of plot.curves) {
      expect(samples.time[samples.time.length - 1]).toBe(changed!.time[changed!.time.length - 1]);
    }
  });

  it('reads out what the samples say', () => {
    const plot = plotOf(waves, { ...choices, view: 'pattern' });
    const { cursor } = drawWaves(plot);
    const { times, lines } = readoutOf(plot, cursor!);
    expect(times).toHaveLength(lines[0]!.volts.length);
    const rest = lines[2]!.volts.at(-1)!;
    const last = waves.pattern.volts[4]!.at(-1)!;
    expect(rest).toBeCloseTo(last, 2);
  });
});
