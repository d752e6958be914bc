/** A curve drawn in characters, for a terminal. */
import { formatSeconds, formatVolts, seconds, volts } from '@fieldpair/shared';
import { levelAt, type Samples } from '@fieldpair/shared/plot';

export interface WaveChart {
  readonly samples: Samples;
  readonly thresholds: { readonly low: number; readonly high: number };
  /** The bits from time 0 on, shown above the curve where there is room; empty for none. */
  readonly bits: string;
  /** Seconds. */
  readonly bitTime: number;
}

const columns = 72;
const rows = 11;
const labelWidth = 9;

/** Lines of at most 82 columns. The thresholds are dotted; two half blocks share a line, so that edges look steep. */
export function waveChart({ samples, thresholds, bits, bitTime }: WaveChart): string[] {
  const { time } = samples;
  const count = time.length;
  if (count < 2) return [];
  const [from, to] = [time[0]!, time[count - 1]!];
  const spans = columnSpans(samples, from, to);
  const low = Math.min(thresholds.low, ...spans.map(([least]) => least));
  const high = Math.max(thresholds.high, ...spans.map(([, greatest]) => greatest));
  /** Half rows from the top, 0 to 2 * rows - 1. */
  const half = (level: number) => Math.round(((high - level) / (high - low)) * (2 * rows - 1));
  const dotted = new Set([thresholds.low, thresholds.high].map((level) => half(level) >> 1));
  const labels = new Map([
    [0, high],
    [rows - 1, low],
    ...[thresholds.low, thresholds.high].map((level) => [half(level) >> 1, level] as const),
  ]);
  const lines: string[] = [];
  for (let row = 0; row < rows; row++) {
    const level = labels.get(row);
    const label = level === undefined ? '' : formatVolts(volts(level));
    const cells = spans.map(
      ([least, greatest]) => block(half(greatest), half(least), row) ?? (dotted.has(row) ? '\u00b7' : ' '),
    );
    lines.push(`${label.padStart(labelWidth)} ${cells.join('')}`.trimEnd());
  }
  const start = formatSeconds(seconds(from));
  const end = formatSeconds(seconds(to));
  const axis = start + ' '.repeat(Math.max(1, columns - start.length - end.length)) + end;
  return [...bitLine(bits, bitTime, from, to), ...lines, `${' '.repeat(labelWidth)} ${axis}`];
}

/** Least and greatest level in each column; a curve has some level everywhere between its ends. */
function columnSpans(samples: Samples, from: number, to: number): (readonly [least: number, greatest: number])[] {
  const spans: (readonly [number, number])[] = [];
  let index = 0;
  for (let column = 0; column < columns; column++) {
    const start = from + ((to - from) * column) / columns;
    const end = column === columns - 1 ? to : from + ((to - from) * (column + 1)) / columns;
    let least = levelAt(samples, start) ?? 0;
    let greatest = least;
    while (index < samples.time.length && samples.time[index]! <= end) {
      const level = samples.volts[index++]!;
      if (level < least) least = level;
      if (greatest < level) greatest = level;
    }
    spans.push([least, greatest]);
  }
  return spans;
}

/** The part of a stroke over half rows that lies in one row. */
function block(top: number, bottom: number, row: number): string | undefined {
  const upper = top <= 2 * row && 2 * row <= bottom;
  const lower = top <= 2 * row + 1 && 2 * row + 1 <= bottom;
  if (upper) return lower ? '\u2588' : '\u2580';
  return lower ? '\u2584' : undefined;
}

/** Each bit above its middle; nothing where they would touch. */
function bitLine(bits: string, bitTime: number, from: number, to: number): string[] {
  const width = (bitTime / (to - from)) * columns;
  if (bits === '' || width < 2) return [];
  const cells = new Array<string>(columns).fill(' ');
  for (const [bit, value] of [...bits].entries()) {
    const column = Math.floor((((bit + 0.5) * bitTime - from) / (to - from)) * columns);
    if (0 <= column && column < columns) cells[column] = value;
  }
  return [`${'bits'.padStart(labelWidth)} ${cells.join('').trimEnd()}`];
}
