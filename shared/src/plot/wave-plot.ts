/** What a plot of waveforms shows, and what its parts share. */
import type { Span, Thresholds } from './axes.js';
import type { Samples } from './trace.js';

export const waveViews = ['step', 'pattern', 'eye'] as const;
export type WaveView = (typeof waveViews)[number];

/** What one landing shows. */
export interface Curve {
  readonly name: string;
  /** Number of its line style; the same landing keeps its number in every view. */
  readonly style: number;
  readonly samples: Samples;
  /** The same landing once something is changed. */
  readonly changed?: Samples;
  /** Seconds from the driver to here. */
  readonly delay: number;
}

export interface WavePlot {
  readonly view: WaveView;
  readonly curves: readonly Curve[];
  /** The bits that are sent, first first; empty for a step. */
  readonly bits: string;
  /** Seconds. */
  readonly bitTime: number;
  /** Where in its bit a receiver looks, as a share of the bit: usually, at the earliest and at the latest. */
  readonly samplingAt: { readonly nominal: number; readonly low: number; readonly high: number };
  readonly thresholds: Thresholds;
  /** Seconds that the plot shows; all of the samples when absent. */
  readonly shown?: Span;
  /** One line above the plot; none when absent. */
  readonly heading?: string;
  /** What the crisp and the pale lines are, when there are both. */
  readonly names?: { readonly curve: string; readonly changed: string };
  /** For those who cannot see the plot: its name, and what it shows in a few sentences. */
  readonly title: string;
  readonly description: string;
  readonly width: number;
  readonly height: number;
  /** Starts every id, so that two plots can stand on one page. */
  readonly prefix: string;
}

/** The least and the greatest of what `values` picks from every curve. */
export function spanOf({ curves }: WavePlot, values: (samples: Samples) => ArrayLike<number>): Span {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { samples, changed } of curves) {
    for (const one of changed ? [samples, changed] : [samples]) {
      const list = values(one);
      for (let index = 0; index < list.length; index++) {
        const value = list[index]!;
        if (!Number.isFinite(value)) continue;
        if (value < low) low = value;
        if (high < value) high = value;
      }
    }
  }
  return [low, high];
}

/** Volts that a plot has to show: its curves and both thresholds. */
export function voltSpan(plot: WavePlot): Span {
  const [low, high] = spanOf(plot, ({ volts }) => volts);
  return [Math.min(low, plot.thresholds.low), Math.max(high, plot.thresholds.high)];
}

/** A path through points, to a tenth of a pixel. */
export function polyline(points: readonly (readonly [number, number])[]): string {
  const tenth = (value: number) => Math.round(value * 10) / 10;
  return points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${tenth(x)} ${tenth(y)}`).join('');
}
