/** Figures and curves out of what every landing receives. */
import type { Range } from '../known.js';
import { canLevels } from '../limits/can.js';
import type { LandingIndex } from '../network.js';
import { waveOfBits } from '../physics/wave/bits.js';
import type { BusWaves } from '../physics/wave/bus-waves.js';
import type { Signalling } from '../physics/wave/drive.js';
import { eyeOf, levelOf, type Receiver, settledOf } from '../physics/wave/eye.js';
import { firstReaching, lastLeaving, type Sampled } from '../physics/wave/resample.js';
import { formatOhms, formatSeconds, ratio, seconds, volts } from '../quantity.js';
import type { BusStudy } from './study.js';
import type { WaveSetting } from './wave-setting.js';
import type { LandingWave, Waves } from './waves.js';

/** The most points of all rows of a pattern together. */
const mostValues = 8e6;

/** The figures of one landing, over all corners that were computed. */
export function landingFigures(
  nominal: BusWaves,
  extremes: readonly BusWaves[],
  landing: LandingIndex,
  receiver: Receiver,
): Omit<LandingWave, 'landing' | 'name' | 'cutOff'> {
  const upright = nominal.upright[landing]!;
  const all = [nominal, ...extremes].map(({ signals }) => {
    const signal = signals[landing]!;
    return { level: levelOf(settledOf(signal), upright, receiver), ...eyeOf(signal, upright, receiver) };
  });
  const { rise, fall } = nominal.signals[landing]!;
  const swing = Math.abs(rise.end);
  let peak = swing;
  const { row } = rise;
  for (let point = 0; point < row.length; point++) peak = Math.max(peak, Math.abs(row[point]!));
  const settling = Math.max(lastLeaving(rise, settledBand * swing), lastLeaving(fall, settledBand * swing));
  return {
    delay: seconds(Math.max(0, firstReaching(rise, rise.end / 2) ?? 0)),
    settling: seconds(Math.max(0, settling)),
    overshoot: ratio(swing === 0 ? 0 : peak / swing - 1),
    level: rangeOf(all.map(({ level }) => volts(level))),
    opening: rangeOf(all.map(({ opening }) => ratio(opening))),
    margin: rangeOf(all.map(({ margin }) => volts(margin))),
  };
}

/** A landing has settled when it stays this near to where it ends, as a share of its swing. */
const settledBand = 0.05;

function rangeOf<T extends number>(values: readonly T[]): Range<T> {
  return { nominal: values[0]!, low: Math.min(...values) as T, high: Math.max(...values) as T };
}

/** The largest of some value, 0 at least; of any number of items. */
function largestOf<T>(items: readonly T[], value: (item: T) => number): number {
  return items.reduce((most, item) => Math.max(most, value(item)), 0);
}

/** Of the step is shown what moves by more than this share of the largest swing, and a quarter as long again. */
const shownShare = 0.003;

/** The time of a response's points, and every landing's as its device sees it. */
export function stepOf({ signals, upright }: BusWaves): Waves['step'] {
  const { start, spacing } = signals[0]!.rise;
  const largest = largestOf(signals, ({ rise }) => Math.abs(rise.end));
  const rest = largestOf(signals, ({ rise }) => lastLeaving(rise, shownShare * largest));
  const longest = largestOf(signals, ({ rise }) => rise.row.length);
  const count = Math.max(2, Math.min(longest, Math.ceil((1.25 * (rest - start)) / spacing) + 1));
  return {
    time: Float64Array.from({ length: count }, (_, point) => start + point * spacing),
    volts: signals.map(({ lower, rise }, landing) => {
      const sign = upright[landing] ? 1 : -1;
      return Float64Array.from({ length: count }, (_, point) => sign * (lower + (rise.row[point] ?? rise.end)));
    }),
  };
}

/** The driven bits at every landing as its device sees them. */
export function patternOf(
  { signals, upright }: BusWaves,
  { bits, bitTime, levelTime, signalling }: WaveSetting,
  wanted = usualSamples,
): Waves['pattern'] {
  const { levelsPerBit } = signalling;
  const most = Math.floor(mostValues / (bits.length * signals.length));
  const perLevel = Math.max(4, Math.min(most, 256, Math.round(wanted) || usualSamples)) / levelsPerBit;
  const [samplesOfLevel, raised] = [Math.ceil(perLevel), levelsOf(bits, signalling)];
  const samples = samplesOfLevel * levelsPerBit;
  return {
    bits,
    time: Float64Array.from({ length: (bits.length - 1) * samples + 1 }, (_, point) => (point * bitTime) / samples),
    volts: signals.map((signal, landing) => {
      const wave = waveOfBits(raised, signal, levelTime, samplesOfLevel);
      return upright[landing] ? wave : wave.map((value) => 0 - value);
    }),
  };
}

const usualSamples = 32;

/** The levels that bits are driven as, true for the upper one. Of the first bit, which was long before, the last level. */
function levelsOf(bits: string, { driven, levelsPerBit }: Signalling): boolean[] {
  if (levelsPerBit === 1) {
    const upper = driven === 'both bits' ? '1' : '0';
    return Array.from(bits, (bit) => bit === upper);
  }
  let level = true;
  const levels = [level];
  for (const bit of bits.slice(1)) {
    level = !level;
    levels.push(level);
    if (bit === '0') level = !level;
    levels.push(level);
  }
  return levels;
}

const timeOf = ({ row, spacing }: Sampled): number => row.length * spacing;

/** Why the answer is not the whole one, as a sentence; undefined when it is. */
export function whyStopped(
  nominal: BusWaves,
  extremes: readonly BusWaves[],
  landings: readonly LandingWave[],
  { edge, bitTime, signalling }: WaveSetting,
): string | undefined {
  const all = [nominal, ...extremes];
  if (!all.every(({ settled }) => settled)) {
    const longestOf = ({ signals }: BusWaves) =>
      largestOf(signals, ({ rise, fall }) => Math.max(timeOf(rise), timeOf(fall)));
    const followed = largestOf(all, longestOf);
    return `the bus does not come to rest within the ${formatSeconds(seconds(followed))} that are followed`;
  }
  const slowest = largestOf(landings, ({ settling }) => settling);
  if (signalling.driven === 'dominant bit' && bitTime < slowest) {
    const needed = formatSeconds(seconds(slowest));
    return `a bit of ${formatSeconds(bitTime)} ends before the line has settled, which takes ${needed}; what earlier bits leave behind is only estimated`;
  }
  if (edge.time * 1.01 < nominal.edge) {
    const slower = formatSeconds(seconds(nominal.edge));
    return `the bus comes to rest so late that an edge of ${slower} is computed in place of ${formatSeconds(edge.time)}`;
  }
  return undefined;
}

/** What stands for values that the catalogue does not state. */
export function assumptionsOf({ bus }: BusStudy, { edge, signalling }: WaveSetting): string[] {
  const assumptions: string[] = [];
  if (signalling.levelsPerBit === 2) {
    assumptions.push(
      'bits are differential Manchester, from memory of transceiver data books: each half is judged like a bit of half the time, and read in its middle',
    );
  }
  if (edge.assumed) {
    const taken = formatSeconds(edge.time);
    assumptions.push(
      `the driver states no edge: ${taken} is taken, and up to ${formatSeconds(edge.slowest)} among the extremes`,
    );
  }
  if (bus.landings.some(({ port, splice }) => splice === undefined && port?.capacitance === undefined)) {
    assumptions.push('ports that state no capacitance have none, and up to 25 pF among the extremes');
  }
  if (bus.kind === 'can' && bus.landings.some(({ port, splice }) => splice === undefined && !port?.resistance)) {
    assumptions.push(`devices that state no resistance load the pair with ${formatOhms(canLevels.leastInput)}`);
  }
  return assumptions;
}
