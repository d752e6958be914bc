/**
 * What is left of the signal of a bus at this rate and with these edges, and what would mend it: what rules about ends,
 * taps, rate and load need in order to tell how much harm a fault does.
 */
import { isUnknown, type Known, type Unknown } from '../known.js';
import { slowerRates } from '../limits/rates.js';
import type { Bus, Landing, LandingIndex } from '../network.js';
import { type BitsPerSecond, metres, type Ratio, ratio } from '../quantity.js';
import { type BusMargin, busMargin, healthyMargin, isHealthy } from './bus-margin.js';
import { rightedBusOf } from './righted-bus.js';
import { type BusStudy, createStudy } from './study.js';
import { marginFloor } from './wave-margins.js';

/** A tap that is as good as none. */
export const shortTap = metres(0.3);

export interface Signal {
  readonly asWritten: BusMargin;
  /**
   * What is left with the one fault at a landing alone (its terminators), every other end, terminator and crossing put
   * right; of landings whose terminators are not as they should be.
   */
  readonly alone: ReadonlyMap<LandingIndex, BusMargin>;
  /** With ends and crossings put right; the same as `asWritten` where they are right. */
  readonly righted: BusMargin;
  /** `righted`, and every tap shortened to {@link shortTap}; the same where there is none. */
  readonly withoutTaps: BusMargin;
  /** The fastest of the slower rates that all devices take at which the righted bus has a healthy margin. */
  readonly slower?: { readonly rate: BitsPerSecond; readonly margin: BusMargin };
  /** Where no rate mends the righted bus: the share of all its lengths at which it would be healthy. */
  readonly shorter?: Ratio;
}

/** A signal that is still being simulated. */
export const signalPending: Unknown = { unknown: 'the waveforms, which are being simulated' };

/** Whether sums alone tell that nothing is wrong with the signal, so that it need not be simulated. */
export function isPlainlyHealthy(study: BusStudy): boolean {
  return healthyMargin <= (marginFloor(study) ?? Number.NEGATIVE_INFINITY);
}

/** Faults at more landings than these are not told one by one. */
const mostAlone = 4;

/** What is left of the signal, or what is missing to tell it. What would mend it is computed only where it is thin. */
export function signalOf(study: BusStudy): Known<Signal> {
  const asWritten = busMargin(study);
  if (isUnknown(asWritten)) return asWritten;
  const alone = new Map<LandingIndex, BusMargin>();
  const whole = { asWritten, alone, righted: asWritten, withoutTaps: asWritten };
  if (isHealthy(asWritten)) return whole;
  const marginOf = (bus: Bus, first?: LandingIndex): BusMargin => {
    const margin = busMargin(createStudy(study.store, bus), first);
    return isUnknown(margin) ? asWritten : margin;
  };
  const { righted: rightedBus, faulty, uncrossed } = rightedBusOf(study);
  const righted = rightedBus === study.bus ? asWritten : marginOf(rightedBus);
  if (faulty.length + (uncrossed ? 1 : 0) === 1) for (const { index } of faulty) alone.set(index, asWritten);
  else for (const one of faulty.slice(0, mostAlone)) alone.set(one.index, marginOf(withTerminators(rightedBus, one)));
  if (isHealthy(righted)) return { ...whole, righted, withoutTaps: righted };
  const short = withShortTaps(rightedBus);
  const withoutTaps = short === rightedBus ? righted : marginOf(short);
  const isHealthyBus = (bus: Bus) => isHealthy(marginOf(bus, righted.driver));
  const rate = slowerRate(rightedBus, isHealthyBus);
  if (rate !== undefined) {
    return { ...whole, righted, withoutTaps, slower: { rate, margin: marginOf(atRate(rightedBus, rate)) } };
  }
  const shorter = shorterShare(rightedBus, isHealthyBus);
  return { ...whole, righted, withoutTaps, ...(shorter !== undefined && { shorter }) };
}

const withTerminators = (bus: Bus, { index, terminations }: Landing): Bus => ({
  ...bus,
  landings: bus.landings.with(index, { ...bus.landings[index]!, terminations }),
});

function withShortTaps(bus: Bus): Bus {
  const isLong = ({ tap, length }: Bus['runs'][number]) => tap && shortTap < length;
  if (!bus.runs.some(isLong)) return bus;
  return { ...bus, runs: bus.runs.map((run) => (isLong(run) ? { ...run, length: shortTap } : run)) };
}

type Test = (bus: Bus) => boolean;

const atRate = (bus: Bus, rate: BitsPerSecond): Bus =>
  bus.rate ? { ...bus, rate: { ...bus.rate, value: rate } } : bus;

/** The fastest of the slower rates that will do. Found by halving: where one will do, every slower one does, or nearly. */
function slowerRate(bus: Bus, isHealthyBus: Test): BitsPerSecond | undefined {
  const rates = slowerRates(bus);
  const slowest = rates.at(-1);
  // Where even that will not do it is not the rate, and that costs no simulation to tell.
  if (slowest === undefined || !isHealthyBus(atRate(bus, slowest))) return undefined;
  let [first, last] = [0, rates.length - 1];
  while (first < last) {
    const middle = (first + last) >> 1;
    if (isHealthyBus(atRate(bus, rates[middle]!))) last = middle;
    else first = middle + 1;
  }
  return rates[last];
}

/** Lengths are told to this share. */
const lengthStep = 1 / 16;

function shorterShare(bus: Bus, isHealthyBus: Test): Ratio | undefined {
  const isHealthyAt = (share: number) =>
    isHealthyBus({ ...bus, runs: bus.runs.map((run) => ({ ...run, length: metres(run.length * share) })) });
  let [healthy, thin] = [0, 1];
  while (lengthStep < thin - healthy) {
    const middle = (healthy + thin) / 2;
    if (isHealthyAt(middle)) healthy = middle;
    else thin = middle;
  }
  return 0 < healthy ? ratio(healthy) : undefined;
}
