/** The two axes of a plot: time in the unit that suits it, and volts. */
import { scaleLinear } from 'd3-scale';
import { element } from './svg.js';

/** A rectangle in pixels. */
export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export type Span = readonly [low: number, high: number];

export interface Axes {
  readonly frame: Frame;
  /** What the frame shows, in seconds and in volts. */
  readonly time: Span;
  readonly volts: Span;
  /** Seconds to pixels. */
  readonly x: (seconds: number) => number;
  /** Volts to pixels. */
  readonly y: (volts: number) => number;
}

const timeUnits = [
  { unit: 's', scale: 1 },
  { unit: 'ms', scale: 1e-3 },
  { unit: 'us', scale: 1e-6 },
  { unit: 'ns', scale: 1e-9 },
] as const;

/** The unit in which the longest of some times is a number above one. */
export function timeUnit(longest: number): { readonly unit: string; readonly scale: number } {
  return timeUnits.find(({ scale }) => scale <= longest * 1.000001) ?? timeUnits[3];
}

/** A span that is empty or not finite becomes one that can be drawn. */
function drawable([low, high]: Span, least: number): Span {
  if (!Number.isFinite(low) || !Number.isFinite(high)) return [-least, least];
  return high - low < least ? [(low + high - least) / 2, (low + high + least) / 2] : [low, high];
}

export function axesFor(frame: Frame, wantedTime: Span, wantedVolts: Span): Axes {
  const time = drawable(wantedTime, 1e-12);
  const [low, high] = drawable(wantedVolts, 1e-3);
  const room = (high - low) * 0.06;
  const volts: Span = [low - room, high + room];
  const { left, right, top, bottom } = frame;
  return { frame, time, volts, x: linear(time, [left, right]), y: linear(volts, [bottom, top]) };
}

/** From one span to another. Plain arithmetic, because every sample goes through it. */
function linear([from, to]: Span, [start, end]: Span): (value: number) => number {
  const slope = (end - start) / (to - from);
  return (value) => start + (value - from) * slope;
}

export const levelName = 'level, + against \u2212 (V)';

/** What is measured along the axes; a level without a name has it beside another frame. */
interface AxisNames {
  readonly time: string;
  readonly level?: string;
}

/** Grid lines with their numbers, and what is measured along each axis. @param dense leaves out every second number. */
export function axisMarks({ frame, time, volts, x, y }: Axes, names: AxisNames, dense = false): string {
  const { left, top, right, bottom } = frame;
  const voltTicks = Math.max(4, Math.round((bottom - top) / (dense ? 40 : 48)));
  const levels = scaleLinear(volts, [0, 1]);
  const yText = levels.tickFormat(voltTicks);
  const rows = levels.ticks(voltTicks).map((value) => {
    const at = y(value);
    const line = element('line', {
      class: value === 0 ? 'wave-zero' : 'wave-grid',
      x1: left,
      x2: right,
      y1: at,
      y2: at,
      stroke: value === 0 ? '#8a8a8a' : '#e0e0e0',
    });
    return line + element('text', { x: left - 7, y: at + 4, 'text-anchor': 'end' }, yText(value));
  });
  const { unit, scale } = timeUnit(Math.max(Math.abs(time[0]), Math.abs(time[1])));
  const inUnit = scaleLinear([time[0] / scale, time[1] / scale], [0, 1]);
  const timeTicks = Math.max(2, Math.round((right - left) / (dense ? 70 : 90)));
  const xText = inUnit.tickFormat(timeTicks);
  const columns = inUnit.ticks(timeTicks).map((value) => {
    const at = x(value * scale);
    return (
      element('line', { class: 'wave-grid', x1: at, x2: at, y1: bottom, y2: bottom + 4, stroke: '#8a8a8a' }) +
      element('text', { x: at, y: bottom + 17, 'text-anchor': 'middle' }, xText(value))
    );
  });
  const middle = `translate(${Math.round(left - 42)} ${Math.round((top + bottom) / 2)}) rotate(-90)`;
  const words = [
    element('text', { x: right, y: bottom + 33, 'text-anchor': 'end' }, `${names.time} (${unit})`),
    names.level === undefined ? '' : element('text', { transform: middle, 'text-anchor': 'middle' }, names.level),
  ];
  const edge = element('rect', {
    class: 'wave-edge',
    x: left,
    y: top,
    width: right - left,
    height: bottom - top,
    fill: 'none',
    stroke: '#8a8a8a',
  });
  return rows.join('') + columns.join('') + words.join('') + edge;
}

export interface Thresholds {
  readonly low: number;
  readonly high: number;
}

/** The hatched levels that a receiver may read either way. @param hatch the id of {@link hatchPattern}. */
export function undecidedBand({ frame, y }: Axes, { low, high }: Thresholds, hatch: string): string {
  const { left, right, top, bottom } = frame;
  const inside = (at: number) => Math.min(bottom, Math.max(top, at));
  const upper = inside(y(high));
  const lower = inside(y(low));
  const width = right - left;
  const band = { class: 'wave-undecided', x: left, y: upper, width, height: lower - upper, fill: `url(#${hatch})` };
  const lines = [upper, lower].map((at) =>
    element('line', {
      ...{ class: 'wave-threshold', x1: left, x2: right, y1: at, y2: at },
      ...{ stroke: '#6b6b6b', 'stroke-dasharray': '1 3' },
    }),
  );
  return element('rect', band) + lines.join('');
}

export const hatchPattern = (id: string) =>
  element(
    'pattern',
    { id, width: 6, height: 6, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)' },
    element('line', { class: 'wave-hatch', x1: 0, x2: 0, y1: 0, y2: 6, stroke: '#b4b4b4', 'stroke-width': 1.4 }),
  );
