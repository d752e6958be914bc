/**
 * What the waveforms of a bus allow: how fast it may run, how much longer it may grow and what would stop it, and what
 * one change would mend a margin that is too thin.
 */
import { isUnknown, type Unknown } from '../known.js';
import { dueTermination } from '../limits/due-terminator.js';
import { firstLengthLimit, isWithinGuide, limitedLength } from '../limits/length.js';
import { settableRates } from '../limits/rates.js';
import type { LandingIndex, Run } from '../network.js';
import { answersAt } from '../physics/can.js';
import type { Fault } from '../physics/wave/fault.js';
import {
  type BitsPerSecond,
  formatNumber,
  formatOhms,
  formatSeconds,
  type Metres,
  metres,
  seconds,
  type Volts,
  volts,
} from '../quantity.js';
import { healthyMargin } from './bus-margin.js';
import { shortTap } from './signal.js';
import type { BusStudy } from './study.js';
import { type WaveQuestion, wavesOf } from './waves.js';

export interface WaveAdvice {
  /** The least margin of all landings, at the worst of all tolerances. */
  readonly margin: Volts;
  /**
   * The fastest of the usual rates with a healthy margin, on CAN of those that its length and its slowest answer allow;
   * undefined when none has one.
   */
  readonly fastest?: BitsPerSecond;
  /**
   * How much longer the trunk may grow at the end away from the driver, and what happens there, as a clause; undefined
   * where the margin is thin already and for a bus without two ends.
   */
  readonly growth?: { readonly length: Metres; readonly stoppedBy: string };
  /** Single changes each of which gives a healthy margin, the cheapest first; empty when it is healthy or none does. */
  readonly cures: readonly string[];
}

/** Edges that drivers are sold with, roughly; common practice. */
const usualEdges = [50e-9, 100e-9, 250e-9, 500e-9, 1e-6, 2.5e-6];
/** Share of a bit that an edge may take. */
const longestEdge = 0.3;
/** Growth is told to a metre, or to this share of what the limit leaves. */
const growthShare = 1 / 256;

/** The advice for a bus while one landing drives, or what is missing for it. */
export function waveAdvice(study: BusStudy, driver: LandingIndex): WaveAdvice | Unknown {
  const asIs = wavesOf(study, { driver, pattern: '0' });
  if (isUnknown(asIs)) return asIs;
  const marginWith = (change: Omit<WaveQuestion, 'driver'>): number => {
    const waves = wavesOf(study, { driver, pattern: '0', coarse: true, ...change });
    return isUnknown(waves) ? Number.NEGATIVE_INFINITY : leastMargin(waves.landings);
  };
  const margin = leastMargin(asIs.landings);
  const fastest = ratesOf(study).find((rate) => healthyMargin <= marginWith({ rate }));
  const growth = healthyMargin <= margin ? growthOf(study, driver, marginWith) : undefined;
  const cures = healthyMargin <= margin ? [] : curesOf(study, asIs.edge.time, fastest, marginWith);
  return {
    margin: volts(margin),
    ...(fastest !== undefined && { fastest }),
    ...(growth && { growth }),
    cures,
  };
}

type MarginWith = (change: Omit<WaveQuestion, 'driver'>) => number;

function leastMargin(landings: readonly { readonly cutOff: boolean; readonly margin: { readonly low: number } }[]) {
  return landings.reduce(
    (least, { cutOff, margin }) => (cutOff ? least : Math.min(least, margin.low)),
    Number.POSITIVE_INFINITY,
  );
}

/** Whether the ports state which rates they can be set to. */
const statesRates = ({ bus }: BusStudy): boolean => bus.landings.some(({ port }) => port && 0 < port.rates.length);

/**
 * The rates that the bus may be set to, the fastest first: its own, and usual ones that no port speaks against. On CAN
 * all nodes answer within a bit, so that a rate is not only a matter of levels.
 */
function ratesOf(study: BusStudy): BitsPerSecond[] {
  const { bus } = study;
  const rates = new Set(settableRates(bus));
  if (bus.rate) rates.add(bus.rate.value);
  const possible = bus.kind === 'can' ? [...rates].filter((rate) => isPossibleOnCan(study, rate)) : [...rates];
  return possible.sort((left, right) => right - left);
}

const isPossibleOnCan = (study: BusStudy, rate: BitsPerSecond) => isWithinGuide(study, rate) && answersAt(study, rate);

function growthOf(study: BusStudy, driver: LandingIndex, marginWith: MarginWith): WaveAdvice['growth'] {
  const { bus, shape } = study;
  const end = shape.ends?.find((one) => one !== driver);
  const last =
    end === undefined ? undefined : bus.landings[end]!.runs.map((run) => bus.runs[run]!).find(({ tap }) => !tap);
  const limit = firstLengthLimit(study);
  if (!last || !limit) return undefined;
  const most = Math.max(0, limit.value - limitedLength(study));
  const isHealthy = (longer: number) => healthyMargin <= marginWith({ faults: [grown(last, longer)] });
  if (isHealthy(most)) return { length: metres(most), stoppedBy: `it reaches ${limit.meaning} (${limit.source})` };
  let [healthy, thin] = [0, most];
  while (Math.max(1, growthShare * most) < thin - healthy) {
    const middle = (healthy + thin) / 2;
    if (isHealthy(middle)) healthy = middle;
    else thin = middle;
  }
  return { length: metres(healthy), stoppedBy: 'the margin at the receivers gets thin' };
}

const grown = (run: Run, longer: number): Fault => ({
  kind: 'length',
  run: run.index,
  length: metres(run.length + longer),
});

/**
 * What costs least comes first: a terminator removed or landed, a setting of all devices that makes polling slower, cable
 * pulled anew, other devices. Common practice, no published source.
 */
function curesOf(study: BusStudy, edge: number, fastest: number | undefined, marginWith: MarginWith): string[] {
  const helps = (change: Omit<WaveQuestion, 'driver'>) => healthyMargin <= marginWith(change);
  const thatHelp = (changes: Iterable<readonly [Fault, string]>) =>
    [...changes].flatMap(([fault, cure]) => (helps({ faults: [fault] }) ? [cure] : []));
  const rate = study.bus.rate?.value;
  const isSlower = fastest !== undefined && rate !== undefined && fastest < rate;
  const slowerEdge = usualEdges.find(
    (one) => edge < one && (rate === undefined || one * rate <= longestEdge) && helps({ edge: seconds(one) }),
  );
  return [
    ...thatHelp(removedTerminators(study)),
    ...thatHelp(dueTerminators(study)),
    ...(isSlower ? [`a rate of ${formatNumber(fastest)} bit/s`] : []),
    ...thatHelp(tapChanges(study)),
    ...(slowerEdge === undefined ? [] : [`a driver whose edge takes ${formatSeconds(seconds(slowerEdge))}`]),
  ];
}

/** No terminator where one stands between the ends. */
function* removedTerminators({ bus, shape }: BusStudy): Generator<readonly [Fault, string]> {
  for (const { index, name, terminations } of bus.landings) {
    if (!shape.ends || shape.ends.includes(index) || terminations.length === 0) continue;
    yield [{ kind: 'terminators', landing: index, terminations: [] }, `no terminator at ${name}`];
  }
}

/** The terminator that is due at an end that has none, or another. */
function* dueTerminators({ bus, shape }: BusStudy): Generator<readonly [Fault, string]> {
  for (const index of shape.ends ?? []) {
    const landing = bus.landings[index]!;
    const due = dueTermination(bus, landing);
    const [present, another] = landing.terminations;
    if (present && !another && present.resistance === due.resistance && present.capacitance === undefined) continue;
    yield [
      { kind: 'terminators', landing: index, terminations: [due] },
      `one terminator of ${formatOhms(due.resistance)} at ${landing.name}`,
    ];
  }
}

function* tapChanges({ bus, lengthText }: BusStudy): Generator<readonly [Fault, string]> {
  for (const { index, tap, spare, length, to } of bus.runs) {
    if (!tap || spare || length <= shortTap || to === undefined) continue;
    const cure = `a tap of at most ${lengthText(shortTap)} to ${bus.landings[to]!.name}`;
    yield [{ kind: 'length', run: index, length: shortTap }, cure];
  }
}

/** The advice as sentences. */
export function adviceText(study: BusStudy, { fastest, growth, cures, margin }: WaveAdvice): string[] {
  const { lengthText, bus } = study;
  const among = statesRates(study) ? 'rate that its devices share' : 'usual rate';
  const healthy = `a healthy margin, ${formatNumber(healthyMargin * 1000)} mV at worst`;
  const by = bus.kind === 'can' ? 'By its waveforms, its length and its slowest answer' : 'By its waveforms';
  const lines = [
    fastest === undefined
      ? `${by}, no ${among} leaves bus ${bus.name} ${healthy}.`
      : `${by}, ${formatNumber(fastest)} bit/s is the fastest ${among} that leaves bus ${bus.name} ${healthy}.`,
  ];
  if (growth) {
    lines.push(
      `At its end away from the driver it may grow by ${lengthText(growth.length)}; there ${growth.stoppedBy}.`,
    );
  }
  const [cheapest, ...others] = cures;
  if (cheapest !== undefined) {
    lines.push(`What mends its margin at the least cost is ${cheapest}.`);
    if (0 < others.length)
      lines.push(`Each of these alone would do too, the cheaper ones first: ${others.join('; ')}.`);
  } else if (margin < healthyMargin) lines.push('No single change of rate, edge, terminator or tap would give it one.');
  return lines;
}

/** The advice as plain data in SI units, as `fieldpair wave --advise --format json` prints it. */
export interface AdviceRecord {
  readonly margin_v: number;
  readonly fastest_bit_per_s: number | null;
  readonly growth_m: number | null;
  readonly growth_stopped_by: string | null;
  readonly cures: readonly string[];
}

export function adviceRecord({ margin, fastest, growth, cures }: WaveAdvice): AdviceRecord {
  return {
    margin_v: Number(margin.toPrecision(6)),
    fastest_bit_per_s: fastest ?? null,
    growth_m: growth ? Number(growth.length.toPrecision(6)) : null,
    growth_stopped_by: growth?.stoppedBy ?? null,
    cures,
  };
}
