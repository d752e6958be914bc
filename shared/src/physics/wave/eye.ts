/**
 * What is left of the bit at a receiver in the worst of all patterns of bits.
 *
 * Where both bits are driven alike: peak distortion analysis (B. K. Casper, M. Haycock, R. Mooney 2002). A bit adds its
 * pulse response p, so that at any instant the worst pattern takes from the bit's own value every other bit's, with
 * the sign that hurts: p(t) - sum over k of |p(t + kT)|. No pattern has to be tried.
 *
 * Where the driver lets go for one bit: rise and fall differ, and the worst is bounded by what each earlier change of
 * the level may still lack, whichever way it went. Where every bit settles, that is nothing and the bound is exact.
 *
 * The receiver takes its time from the edge of a start bit after a long idle (CAN: from recessive to dominant), where
 * that edge passes the middle between the thresholds.
 */
import type { Range } from '../../known.js';
import type { Signal } from './bits.js';
import type { SettledLevels } from './bus-waves.js';
import { firstReaching, resampled, type Sampled } from './resample.js';

export interface Receiver {
  /** Of one level: where a bit is made of two, half of it. */
  readonly bitTime: number;
  readonly threshold: { readonly high: number; readonly low: number };
  readonly samplingAt: Range<number>;
}

export interface Eye {
  /** Share of the bit. */
  readonly opening: number;
  /** Volts. */
  readonly margin: number;
}

const mostPhases = 128;
const leastPhases = 16;

export const settledOf = ({ lower, rise }: Signal): SettledLevels => ({ lower, upper: lower + rise.end });

/** The eye of a landing; `upright` is false where the device sees the pair the other way round. */
export function eyeOf(signal: Signal, upright: boolean, receiver: Receiver): Eye {
  const { rise, fall } = signal;
  const { bitTime } = receiver;
  const phases = Math.min(mostPhases, Math.max(leastPhases, Math.round(bitTime / rise.spacing)));
  const levels = new Float64Array(phases + 1);
  if (!upright || Math.abs(rise.end) < 1e-9 || bitTime < 2 * rise.spacing) {
    levels.fill(
      upright ? worstOfVeryShortBits(signal, receiver) : settledMargin(settledOf(signal), false, receiver.threshold),
    );
  } else if (fall === rise) drivenLevels(signal, receiver, levels);
  else releasedLevels(signal, receiver, levels);
  const { low, high } = receiver.samplingAt;
  let margin = Number.POSITIVE_INFINITY;
  for (let phase = Math.floor(low * phases); phase <= Math.ceil(high * phases); phase++) {
    margin = Math.min(margin, levels[phase]!);
  }
  return { opening: longestAbove(levels), margin };
}

/**
 * The settled level that counts: of RS-485 the lesser of both, of CAN the dominant one; negative where the device takes
 * each bit for the other.
 */
export function levelOf({ lower, upper }: SettledLevels, upright: boolean, { threshold }: Receiver): number {
  if (0 <= threshold.low) return upright ? upper : -upper;
  return upright ? Math.min(upper, -lower) : Math.min(-upper, lower);
}

/** How far the settled levels lie beyond their thresholds, the lesser; of a device that sees them swapped too. */
export function settledMargin(
  { lower, upper }: SettledLevels,
  upright: boolean,
  { high, low }: Receiver['threshold'],
): number {
  return upright ? Math.min(upper - high, low - lower) : Math.min(lower - high, low - upper);
}

/** Bits far shorter than the edge: every change of the response is another bit's, none is the bit's own. */
function worstOfVeryShortBits({ lower, rise }: Signal, { threshold }: Receiver): number {
  let variation = 0;
  for (let point = 1; point < rise.row.length; point++) variation += Math.abs(rise.row[point]! - rise.row[point - 1]!);
  const middle = lower + rise.end / 2;
  return Math.min(middle - threshold.high, threshold.low - middle) - variation / 2;
}

/** Levels beyond the threshold at each phase of the bit, from its edge's arrival to the next one's. */
function drivenLevels({ lower, rise }: Signal, receiver: Receiver, levels: Float64Array): void {
  const { bitTime, threshold } = receiver;
  const phases = levels.length - 1;
  // The start bit falls from lower + rise.end: it passes the middle when the response has reached what is above.
  const { values, own: at } = aroundArrival(
    rise,
    lower + rise.end - (threshold.high + threshold.low) / 2,
    bitTime,
    phases,
  );
  const middle = lower + rise.end / 2;
  const lost = Math.max(threshold.high - middle, middle - threshold.low);
  for (let phase = 0; phase <= phases; phase++) {
    const own = values[phase + at]! - values[phase + at - phases]!;
    let others = 0;
    for (let slot = phase + phases; slot < values.length; slot += phases) {
      others += Math.abs(values[slot]! - values[slot - phases]!);
    }
    levels[phase] = (own - (others - Math.abs(own))) / 2 - lost;
  }
}

function releasedLevels({ lower, rise, fall }: Signal, receiver: Receiver, levels: Float64Array): void {
  const { bitTime, threshold } = receiver;
  const phases = levels.length - 1;
  const { from, own, values: up } = aroundArrival(rise, (threshold.high + threshold.low) / 2 - lower, bitTime, phases);
  const down = resampled(fall, from, bitTime / phases, up.length);
  const { end } = rise;
  for (let phase = 0; phase <= phases; phase++) {
    let lacking = 0;
    for (let slot = phase + own + phases; slot < up.length; slot += phases) {
      lacking += Math.max(Math.abs(end - up[slot]!), Math.abs(end - down[slot]!));
    }
    const now = phase + own;
    const next = now - phases;
    const upper = Math.min(end, up[now]!) - Math.max(0, down[next]!) - lacking;
    const under = end - Math.min(end, down[now]!) + Math.max(0, up[next]!) + lacking;
    // At worst the bit is still the other one.
    levels[phase] = Math.min(lower + Math.max(0, upper) - threshold.high, threshold.low - lower - Math.min(end, under));
  }
}

/** A response from before its edge begins until it has settled. */
interface Surroundings {
  /** Time of the first value. */
  readonly from: number;
  /** Which value is the one when the edge arrives: a whole number of bits after the first. */
  readonly own: number;
  readonly values: Float64Array;
}

/** `level` is where the response is when its edge counts as arrived. */
function aroundArrival(response: Sampled, level: number, bitTime: number, phases: number): Surroundings {
  const { start, spacing, row, end } = response;
  const reachable = Math.min(0.9, Math.max(0.1, level / end)) * end;
  const arrival = firstReaching(response, reachable) ?? start;
  const before = Math.max(2, Math.ceil((arrival - start) / bitTime) + 1);
  const after = Math.max(0, Math.ceil((start + spacing * row.length - arrival) / bitTime)) + 2;
  const from = arrival - before * bitTime;
  const count = (before + after) * phases + 1;
  return { from, own: before * phases, values: resampled(response, from, bitTime / phases, count) };
}

/** The longest stretch above zero as a share of all, its ends found between the phases. */
function longestAbove(levels: Float64Array): number {
  const phases = levels.length - 1;
  let longest = 0;
  let began: number | undefined;
  for (let phase = 0; phase <= phases; phase++) {
    const level = levels[phase]!;
    const before = phase === 0 ? level : levels[phase - 1]!;
    const crossing = level === before ? phase : phase - level / (level - before);
    if (0 <= level) began ??= phase === 0 ? 0 : crossing;
    else if (began !== undefined) {
      longest = Math.max(longest, crossing - began);
      began = undefined;
    }
  }
  if (began !== undefined) longest = Math.max(longest, phases - began);
  return Math.min(1, longest / phases);
}
