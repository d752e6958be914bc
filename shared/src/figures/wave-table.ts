/** What waveforms mean, in words: the same table and sentences in the editor's view and in the terminal. */
import type { Range } from '../known.js';
import { listed } from '../known.js';
import { type Bus, rs485Kinds } from '../network.js';
import { formatNumber, formatSeconds, formatSignificant, formatVolts, type Ratio } from '../quantity.js';
import { rangeText } from './page/words.js';
import type { BusStudy } from './study.js';
import type { LandingWave, Waves } from './waves.js';

/** Whether a bus is of a kind whose waves can be told. */
export const hasWaves = ({ kind }: Bus): boolean => kind !== undefined && (rs485Kinds.has(kind) || kind === 'can');

/** How surely what is driven is read at a landing. */
export type WaveVerdict =
  /** At the worst of all tolerances too. */
  | 'sure'
  /** With values as stated, not at the worst of all tolerances. */
  | 'typically'
  | 'not sure'
  | 'cut off';

export function verdictOf({ cutOff, margin }: LandingWave): WaveVerdict {
  if (cutOff) return 'cut off';
  if (margin.nominal < 0) return 'not sure';
  return margin.low < 0 ? 'typically' : 'sure';
}

export const waveColumns = ['landing', 'read', 'margin', 'opening', 'level', 'overshoot', 'settles', 'delay'] as const;

/** What the columns mean, for a person who sees the table for the first time. */
export const waveColumnsExplained =
  'Read: sure at the worst of all tolerances; typically with values as stated, not at the worst; not sure even so. ' +
  'Margin: the least by which the level is beyond the threshold when the receiver looks, over every pattern of bits. ' +
  'Opening: the share of the bit in which the level is beyond it. Settles: until within 5 % of where it ends. ' +
  'Delay and settling count from the edge of the driver.';

/** One row for each landing, in the order of {@link waveColumns}. */
export function waveRow(one: LandingWave): string[] {
  const verdict = verdictOf(one);
  if (verdict === 'cut off') return [one.name, verdict, '', '', '', '', '', ''];
  return [
    one.name,
    verdict,
    rangeText(one.margin, formatVolts),
    rangeText(one.opening, percent),
    rangeText(one.level, formatVolts),
    percent(one.overshoot),
    formatSeconds(one.settling),
    formatSeconds(one.delay),
  ];
}

const percent = (share: Ratio) => `${formatNumber(share * 100)} %`;

/** The landing with the least margin, in the worst case; undefined when all but the driver are cut off. */
export function worstOf({ landings }: Waves): LandingWave | undefined {
  const joined = landings.filter(({ cutOff }) => !cutOff);
  return joined.toSorted((left, right) => left.margin.low - right.margin.low)[0];
}

/** Whose waves they are: `northgate, bus cases: head drives at 19,200 bit/s`. */
export function waveHeading({ store, bus }: Pick<BusStudy, 'store' | 'bus'>, { driver, bitTime }: Waves): string {
  return `${store.name}, bus ${bus.name}: ${bus.landings[driver]!.name} drives at ${formatNumber(1 / bitTime)} bit/s`;
}

/** The outcome in one or two sentences. */
export function waveSummary(waves: Waves): string {
  const worst = worstOf(waves);
  const cut = waves.landings.filter(({ cutOff }) => cutOff).map(({ name }) => name);
  const lost = cut.length ? ` Cut off from the driver: ${listed(cut)}.` : '';
  if (!worst) return `No landing can be reached from the driver.${lost}`;
  const { nominal, low } = worst.margin;
  const [stated, atWorst] = [formatVolts(nominal), formatVolts(low)];
  const least = atWorst === stated ? stated : `${stated} (${atWorst} at worst)`;
  const read = (verdict: WaveVerdict) =>
    waves.landings.filter((one) => verdictOf(one) === verdict).map(({ name }) => name);
  const misread = read('not sure');
  const doubtful = read('typically');
  const verdict = misread.length
    ? `Bits may be misread at ${listed(misread)}.`
    : doubtful.length
      ? `Read for certain, but for the worst of all tolerances, which would spoil bits at ${listed(doubtful)}.`
      : `Every landing${cut.length ? ' that the signal reaches' : ''} is read for certain.`;
  return `${verdict} The least margin is ${least}, at ${worst.name}.${lost}`;
}

/** What was assumed, varied and left out, each a sentence. */
export function waveNotes(waves: Waves): string[] {
  const { edge, samplingAt, threshold, stopped, assumptions, corners } = waves;
  const notes = [
    `At ${formatNumber(1 / waves.bitTime)} bit/s a bit lasts ${formatSeconds(waves.bitTime)}; the driver's edge takes ${formatSeconds(edge.time)}${edge.assumed ? ', which is assumed' : ''}.`,
    `A receiver reads for certain at ${formatVolts(threshold.low)} and below and at ${formatVolts(threshold.high)} and above, and looks ${shareText(samplingAt)} into the bit.`,
  ];
  if (assumptions.length) notes.push(...assumptions.map((one) => `Assumed: ${one}.`));
  if (corners.length) notes.push(`Least and most are over ${corners.join(', ')}.`);
  if (stopped !== undefined) notes.push(stopped);
  return notes;
}

function shareText({ nominal, low, high }: Range<Ratio>): string {
  const text = (share: number) => formatSignificant(share * 100);
  return low === high ? `${text(nominal)} %` : `${text(low)} to ${text(high)} %`;
}
