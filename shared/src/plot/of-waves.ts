/** From the waves of a bus to what a plot of them shows. */

import { waveSummary, worstOf } from '../figures/wave-table.js';
import type { Waves } from '../figures/waves.js';
import type { Frame, Span } from './axes.js';
import { styleNumbers } from './line-styles.js';
import { levelAt, type Samples } from './trace.js';
import type { Curve, WavePlot, WaveView } from './wave-plot.js';

/** What is chosen about a plot; landings are told by name, because a change may number them anew. */
export interface PlotChoices {
  readonly view: WaveView;
  /** In this order; `usualLandings` when left out. */
  readonly landings?: readonly string[];
  readonly changed?: { readonly waves: Waves; readonly name: string; readonly written: string };
  /** Seconds from and to which lines over time are drawn; all of them when left out. */
  readonly shown?: Span;
  readonly heading?: string;
  /** `northgate, bus chillers, head drives`: the plot's name begins with it. */
  readonly subject: string;
  readonly width: number;
  readonly height: number;
  readonly prefix: string;
}

/**
 * A sequence in which every group of seven bits but seven zeros comes once, for an eye that has seen them all: the
 * pseudo-random sequence of ITU-T O.150 with the polynomial x^7 + x^6 + 1.
 */
export const eyePattern: string = pseudoRandom();

/** Points in each bit that make the ringing of a quick bus look round. */
export const plotSamples = 96;
/** The same for a plot that shows a part of a pattern only: the most that can be asked. */
export const closeSamples = 256;

function pseudoRandom(): string {
  let register = 0x7f;
  let bits = '';
  for (let bit = 0; bit < 127; bit++) {
    bits += register & 1;
    register = (register >> 1) | (((register ^ (register >> 1)) & 1) << 6);
  }
  // Seven bits again, so that the last groups are whole too.
  return bits + bits.slice(0, 7);
}

/** How many lines a plot shows unless somebody chooses more. */
const mostUsual = 4;
/** Landings whose delays are closer than this share of the longest one see nearly the same. */
const alike = 0.1;

/** The landings that tell most: the driver, the one with the least margin, and others far from these and each other. */
export function usualLandings(waves: Waves): string[] {
  const joined = waves.landings.filter(({ cutOff }) => !cutOff);
  const driver = waves.landings.find(({ landing }) => landing === waves.driver);
  const chosen = new Set([driver, worstOf(waves)].filter((one) => one !== undefined));
  const longest = Math.max(0, ...joined.map(({ delay }) => delay));
  while (chosen.size < mostUsual) {
    const apart = joined.map((one) => ({
      one,
      distance: Math.min(...[...chosen].map(({ delay }) => Math.abs(delay - one.delay))),
    }));
    const [farthest] = apart.toSorted((left, right) => right.distance - left.distance);
    if (!farthest || !(alike * longest < farthest.distance)) break;
    chosen.add(farthest.one);
  }
  return waves.landings.filter((one) => chosen.has(one)).map(({ name }) => name);
}

export function plotOf(waves: Waves, choices: PlotChoices): WavePlot {
  const { view, changed, subject } = choices;
  const names = choices.landings ?? usualLandings(waves);
  const shown = names.flatMap((name) => waves.landings.find((landing) => landing.name === name) ?? []);
  const styles = styleNumbers(shown.map(({ landing }) => landing));
  const end =
    view === 'step'
      ? Math.max(...[waves, ...(changed ? [changed.waves] : [])].map(({ step }) => step.time.at(-1) ?? 0))
      : 0;
  /** A step goes on at the level where it has come to rest, as long as the other one goes on. */
  const held = ({ stopped }: Waves, samples: Samples): Samples => {
    const last = samples.time.length - 1;
    if (last < 0 || stopped !== undefined || !(samples.time[last]! < end)) return samples;
    return { time: [...Array.from(samples.time), end], volts: [...Array.from(samples.volts), samples.volts[last]!] };
  };
  const curves = shown.map((one, index): Curve => {
    const { name } = one;
    const other = changed?.waves.landings.find((landing) => landing.name === name);
    return {
      name,
      style: styles[index]!,
      samples: held(waves, samplesOf(waves, view, one.landing)),
      ...(changed && other ? { changed: held(changed.waves, samplesOf(changed.waves, view, other.landing)) } : {}),
      delay: one.cutOff ? 0 : one.delay,
    };
  });
  const what = { step: 'one edge', pattern: 'a pattern of bits', eye: 'all bits laid over each other' }[view];
  return {
    view,
    curves,
    // The first bit was there long before; the plot begins with the second.
    bits: waves.pattern.bits.slice(1),
    bitTime: waves.bitTime,
    samplingAt: waves.samplingAt,
    thresholds: waves.threshold,
    ...(choices.shown === undefined ? {} : { shown: choices.shown }),
    ...(choices.heading === undefined ? {} : { heading: choices.heading }),
    ...(changed ? { names: { curve: changed.written, changed: changed.name } } : {}),
    title: `${subject}: ${what}`,
    description: [
      `Levels over time at ${names.join(', ')}.`,
      waveSummary(waves),
      ...(changed ? [`With the change (${changed.name}): ${waveSummary(changed.waves)}`] : []),
    ].join(' '),
    width: choices.width,
    height: choices.height,
    prefix: choices.prefix,
  };
}

/** What one landing shows in a view; empty when the waves have nothing of it. */
export function samplesOf({ step, pattern }: Waves, view: WaveView, landing: number): Samples {
  const { time, volts } = view === 'step' ? step : pattern;
  return { time, volts: volts[landing] ?? [] };
}

/** Levels for a cursor that moves over a plot, at evenly spaced moments; null where a line has none. */
export interface Readout {
  /** Seconds. */
  readonly times: readonly number[];
  /** Volts, to a millivolt; `changed` once something is changed. */
  readonly lines: readonly { readonly name: string; readonly volts: Levels; readonly changed?: Levels }[];
}
type Levels = readonly (number | null)[];

export function readoutOf(
  { curves }: WavePlot,
  { time, frame }: { readonly time: Span; readonly frame: Frame },
): Readout {
  const count = Math.max(2, Math.round(frame.right - frame.left) + 1);
  const last = count - 1;
  // The ends are exact: past them a curve has no level.
  const times = Array.from({ length: count }, (_, index) =>
    index === last ? time[1] : time[0] + ((time[1] - time[0]) * index) / last,
  );
  const levels = (samples: Samples): Levels =>
    times.map((moment) => {
      const level = levelAt(samples, moment);
      return level === undefined ? null : Math.round(level * 1000) / 1000;
    });
  return {
    times,
    lines: curves.map(({ name, samples, changed }) => ({
      name,
      volts: levels(samples),
      ...(changed ? { changed: levels(changed) } : {}),
    })),
  };
}
