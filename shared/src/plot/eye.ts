/** The eye: every bit of a pattern laid over the others, a panel for each landing. */
import { type Axes, axesFor, axisMarks, levelName, undecidedBand } from './axes.js';
import { lineStyle } from './line-styles.js';
import { remarkLines, remarkPitch, remarksOf } from './remarks.js';
import { element, escapedLine, shortened } from './svg.js';
import { levelAt, pixelPoints, type Samples } from './trace.js';
import { type Curve, polyline, voltSpan, type WavePlot } from './wave-plot.js';

/** Panels beyond these are left out, and the plot says so: they would be too small to read. */
export const mostEyes = 9;
/** Pixels: between panels, for the name of the level, and for its numbers. */
const [gap, axisName, numbers] = [14, 24, 34];

/** How many columns and rows suit a number of panels. */
export function eyeGrid(count: number): { readonly columns: number; readonly rows: number } {
  const columns = count <= 2 ? Math.max(1, count) : count <= 4 ? 2 : 3;
  return { columns, rows: Math.max(1, Math.ceil(count / columns)) };
}

export function eyePanels(plot: WavePlot, headroom: number, hatch: string): string {
  const shown = plot.curves.slice(0, mostEyes);
  const { columns, rows } = eyeGrid(shown.length);
  const width = (plot.width - axisName) / columns;
  const left = plot.curves.length - shown.length;
  const more = left ? `; ${left} more landings are chosen than fit here` : '';
  const remarks = remarksOf(plot, `shaded: when receivers look; hatched: they may read either${more}`);
  const foot = remarks.length * remarkPitch + 4;
  const height = (plot.height - headroom - foot) / rows;
  const volts = voltSpan(plot);
  const panels = shown.map((curve, index) => {
    const column = index % columns;
    const left = column * width + axisName + numbers;
    const top = headroom + Math.floor(index / columns) * height + 24;
    const frame = { left, top, right: left + width - numbers - gap, bottom: top + height - 70 };
    return panel(plot, curve, axesFor(frame, [-plot.bitTime / 2, 1.5 * plot.bitTime], volts), hatch, column === 0);
  });
  return panels.join('') + remarkLines(remarks, plot.height);
}

/** @param first whether it stands in the first column, where the level has its name */
function panel(plot: WavePlot, curve: Curve, axes: Axes, hatch: string, first: boolean): string {
  const { frame, x } = axes;
  const { className, colour } = lineStyle(curve.style);
  const moment = x(plot.samplingAt.nominal * plot.bitTime);
  const heading = element(
    'text',
    { x: frame.left, y: frame.top - 7, 'font-weight': 600 },
    element('title', {}, escapedLine(curve.name)),
    escapedLine(shortened(curve.name, Math.max(8, Math.floor((frame.right - frame.left) / 8)))),
  );
  const line = (path: string, attributes: Record<string, string | number>) =>
    element('path', { class: className, d: path, fill: 'none', stroke: colour, ...attributes });
  const pale = curve.changed
    ? line(foldedPath(plot, curve.changed, curve.delay, axes), { 'stroke-width': 5, 'stroke-opacity': 0.16 })
    : '';
  const [earliest, latest] = [x(plot.samplingAt.low * plot.bitTime), x(plot.samplingAt.high * plot.bitTime)];
  const window = {
    class: 'wave-window',
    x: earliest,
    y: frame.top,
    width: latest - earliest,
    height: frame.bottom - frame.top,
  };
  return [
    element('rect', { ...window, fill: '#222222', 'fill-opacity': 0.07 }),
    undecidedBand(axes, plot.thresholds, hatch),
    axisMarks(axes, { time: 'time within the bit', ...(first ? { level: levelName } : {}) }, true),
    ...[0, 1].map((bit) =>
      element('line', {
        class: 'wave-border',
        x1: x(bit * plot.bitTime),
        x2: x(bit * plot.bitTime),
        y1: frame.top,
        y2: frame.bottom,
        stroke: '#bdbdbd',
        'stroke-dasharray': '2 4',
      }),
    ),
    pale,
    line(foldedPath(plot, curve.samples, curve.delay, axes), { 'stroke-width': 1.1, 'stroke-opacity': 0.75 }),
    element('line', { class: 'wave-look', x1: moment, x2: moment, y1: frame.top, y2: frame.bottom, stroke: '#222222' }),
    element('path', { class: 'wave-look', d: `M${Math.round(moment) - 5} ${frame.top}h10l-5 7z`, fill: '#222222' }),
    heading,
  ].join('');
}

/**
 * All bits of a pattern as one path, each from half a bit before it to half a bit behind. Bits that look the same to a
 * tenth of a pixel are drawn once: of a well settled bus only a few are left.
 */
function foldedPath(plot: WavePlot, samples: Samples, delay: number, { x, y }: Axes): string {
  const paths = new Set<string>();
  for (let bit = 0; bit < plot.bits.length; bit++) {
    const start = delay + bit * plot.bitTime;
    const part = cut(samples, start - plot.bitTime / 2, start + 1.5 * plot.bitTime);
    if (part) paths.add(polyline(pixelPoints(part, (moment) => x(moment - start), y)));
  }
  return [...paths].join('');
}

/** The samples between two moments, with one exactly at each; undefined where the curve does not reach. */
function cut(samples: Samples, from: number, to: number): Samples | undefined {
  const first = levelAt(samples, from);
  const last = levelAt(samples, to);
  if (first === undefined || last === undefined) return undefined;
  const time = [from];
  const volts = [first];
  for (let index = firstAfter(samples.time, from); index < samples.time.length && samples.time[index]! < to; index++) {
    time.push(samples.time[index]!);
    volts.push(samples.volts[index]!);
  }
  time.push(to);
  volts.push(last);
  return { time, volts };
}

/** The index of the first moment behind another. */
function firstAfter(time: ArrayLike<number>, moment: number): number {
  let [low, high] = [0, time.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (time[middle]! <= moment) low = middle + 1;
    else high = middle;
  }
  return low;
}
