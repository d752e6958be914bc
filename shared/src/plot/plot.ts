/**
 * Waveforms as a picture: the one renderer for the view in the editor, the SVG file and the command line.
 *
 * Everything is drawn with plain attributes, so that a file needs no style sheet; a view that has themes sets the
 * colours of the classes instead. A plot is readable without colour: lines differ in dashes too, carry their names, and
 * what a change would make of them lies behind them as a broad pale line.
 */
import {
  type Axes,
  axesFor,
  axisMarks,
  type Frame,
  hatchPattern,
  levelName,
  type Span,
  undecidedBand,
} from './axes.js';
import { eyePanels } from './eye.js';
import { type LineEnd, labelsWidth, lineLabels } from './labels.js';
import { lineStyle } from './line-styles.js';
import { remarkLines, remarkPitch, remarksOf } from './remarks.js';
import { element, escapedLine } from './svg.js';
import { levelAt, pixelPoints, type Samples } from './trace.js';
import { type Curve, polyline, spanOf, voltSpan, type WavePlot } from './wave-plot.js';

/** A drawn plot, and how its frame maps to time and volts, for a cursor over it. */
export interface DrawnPlot {
  readonly svg: string;
  /** Absent for the eye, which has a frame for each landing. */
  readonly cursor?: { readonly frame: Frame; readonly time: Span; readonly volts: Span };
}

export function drawWaves(plot: WavePlot): DrawnPlot {
  const headroom = plot.heading === undefined ? 0 : 24;
  const hatch = `${plot.prefix}-hatch`;
  if (plot.view === 'eye') {
    return { svg: sheet(plot, hatch, headed(plot) + eyePanels(plot, headroom, hatch)) };
  }
  const names = plot.curves.map(({ name }) => name);
  const labels = labelsWidth(names, Math.round(plot.width * 0.3));
  const [left, right] = [58, plot.width - labels];
  const remarks = remarksOf(plot, lineMarks);
  const frame = {
    left,
    top: 26 + headroom,
    right,
    bottom: plot.height - 40 - remarkPitch * remarks.length,
  };
  const axes = axesFor(frame, plot.shown ?? spanOf(plot, ({ time }) => time), voltSpan(plot));
  const parts = [
    headed(plot),
    undecidedBand(axes, plot.thresholds, hatch),
    axisMarks(axes, { time: plot.view === 'step' ? 'time since the edge' : 'time', level: levelName }),
    plot.view === 'pattern' ? bitBorders(plot, axes) : '',
    element(
      'g',
      { 'clip-path': `url(#${plot.prefix}-frame)` },
      ...plot.curves.map((curve) => lines(curve, axes)),
      samplingDots(plot, axes),
    ),
    lineLabels(
      frame,
      plot.curves.flatMap((curve) => endOf(curve, axes)),
      labels,
    ),
    remarkLines(remarks, plot.height),
  ];
  const clip = element('clipPath', { id: `${plot.prefix}-frame` }, frameRect(frame));
  return {
    svg: sheet(plot, hatch, clip + parts.join('')),
    cursor: { frame, time: axes.time, volts: axes.volts },
  };
}

const frameRect = ({ left, top, right, bottom }: Frame) =>
  element('rect', { x: left, y: top, width: right - left, height: bottom - top });

function sheet({ width, height, prefix, title, description }: WavePlot, hatch: string, content: string): string {
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${width} ${height}`,
      width,
      height,
      role: 'img',
      'aria-labelledby': `${prefix}-title ${prefix}-description`,
      'font-family': 'system-ui, Helvetica, Arial, sans-serif',
      'font-size': 12,
      fill: '#222222',
    },
    element('title', { id: `${prefix}-title` }, escapedLine(title)),
    element('desc', { id: `${prefix}-description` }, escapedLine(description)),
    element('rect', { class: 'wave-ground', width, height, fill: '#ffffff' }),
    element('defs', {}, hatchPattern(hatch)),
    content,
  );
}

const headed = ({ heading }: WavePlot) =>
  heading === undefined
    ? ''
    : element('text', { x: 10, y: 19, 'font-size': 14, 'font-weight': 600 }, escapedLine(heading));

function lines(curve: Curve, axes: Axes): string {
  const { className, colour, dashes } = lineStyle(curve.style);
  const line = (samples: Samples, attributes: Record<string, string | number | undefined>) =>
    element('path', {
      class: className,
      d: polyline(pixelPoints(samples, axes.x, axes.y)),
      fill: 'none',
      stroke: colour,
      'stroke-linejoin': 'round',
      ...attributes,
    });
  const pale = curve.changed ? line(curve.changed, { 'stroke-width': 6, 'stroke-opacity': 0.28 }) : '';
  return pale + line(curve.samples, { 'stroke-width': 1.8, 'stroke-dasharray': dashes });
}

/** Where a line leaves the frame; none for a line that has no point in it. */
function endOf({ name, style, samples }: Curve, { frame, time, y }: Axes): LineEnd[] {
  const last = samples.time[samples.time.length - 1];
  if (last === undefined) return [];
  const level = levelAt(samples, Math.min(last, time[1]));
  return level === undefined ? [] : [{ name, style, y: Math.min(frame.bottom, Math.max(frame.top, y(level))) }];
}

/** Where the driver's bits begin, and their values where there is room. */
function bitBorders({ bits, bitTime }: WavePlot, { frame, x }: Axes): string {
  const width = Math.abs(x(bitTime) - x(0));
  const every = Math.max(1, Math.ceil(3 / width));
  let marks = '';
  for (let bit = 0; bit <= bits.length; bit += every) {
    const at = x(bit * bitTime);
    if (at < frame.left - 0.5 || frame.right + 0.5 < at) continue;
    marks += element('line', {
      class: 'wave-border',
      x1: at,
      x2: at,
      y1: frame.top,
      y2: frame.bottom,
      stroke: '#bdbdbd',
      'stroke-dasharray': '2 4',
    });
    const middle = at + width / 2;
    if (bit < bits.length && 11 <= width && middle <= frame.right) {
      marks += element(
        'text',
        { class: 'wave-bit', x: middle, y: frame.top - 6, 'text-anchor': 'middle' },
        escapedLine(bits[bit]!),
      );
    }
  }
  return marks;
}

/** Room between two dots, in pixels, below which they would only hide the line. */
const dotPitch = 9;

/** Dots where a receiver looks at each bit, on its own line: it is as late as the signal. */
function samplingDots({ curves, view, bits, bitTime, samplingAt }: WavePlot, { time, x, y }: Axes): string {
  if (Math.abs(x(bitTime) - x(0)) < dotPitch) return '';
  const count = view === 'step' ? 1 : bits.length;
  const [first, last] = time;
  const dots = curves.map(({ samples, style, delay }) => {
    let marks = '';
    for (let bit = 0; bit < count; bit++) {
      const moment = delay + (bit + samplingAt.nominal) * bitTime;
      const level = levelAt(samples, moment);
      if (level === undefined || moment < first || last < moment) continue;
      const { className, colour } = lineStyle(style);
      marks += element('circle', {
        class: `${className} wave-dot`,
        cx: x(moment),
        cy: y(level),
        r: 3,
        fill: '#ffffff',
        stroke: colour,
        'stroke-width': 1.6,
      });
    }
    return marks;
  });
  return dots.join('');
}

/** What the marks of lines over time mean. */
const lineMarks = 'dots: where receivers look; hatched: they may read either';
