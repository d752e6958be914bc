/** One bus against every limit that has a number: what hovers and the line above a bus show. */
import { lengthForRate, lengthLimit, limitedLength } from '../limits/length.js';
import { idleThreshold } from '../limits/level.js';
import type { Limit } from '../limits/limit.js';
import { biasLimit, loadLimit } from '../limits/load.js';
import { modbusTapLimit } from '../limits/tap.js';
import type { BusKind, LandingIndex } from '../network.js';
import { formatNumber, formatVolts, metres, type Volts } from '../quantity.js';
import { type BusStudy, isUnknown } from './study.js';
import { canLines } from './summary-can.js';
import { linkLines, segmentLines } from './summary-links.js';
import { twoWireSummary } from './two-wire-summary.js';

export interface SummaryLine {
  /** What is compared: `length`, `unit loads`. */
  readonly what: string;
  /** As a person reads it, or `unknown: …`. */
  readonly value: string;
  /** `at most 1,000 m`, `at least 200 mV`. */
  readonly limit: string;
  readonly document: string;
  readonly strength: Limit['strength'];
  /** How much of the limit is used, 1 for all of it and more beyond; undefined while the value is unknown. */
  readonly share?: number;
}

export function summary(study: BusStudy): SummaryLine[] {
  const lines = [
    ...[lengthLine(study), rateLine(study), tapLine(study)],
    ...[loadLine(study), biasLine(study), idleLine(study)],
  ];
  return [...lines.flatMap((line) => line ?? []), ...(linesOf(study)?.(study) ?? [])];
}

/** What kinds other than RS-485 are held against besides. */
const kindLines: Readonly<Partial<Record<BusKind, (study: BusStudy) => SummaryLine[]>>> = {
  can: canLines,
  'free-topology': segmentLines,
  ethernet: linkLines,
  'contact-loop': twoWireSummary,
  supply: twoWireSummary,
};
const linesOf = ({ bus }: BusStudy) => (bus.kind === undefined ? undefined : kindLines[bus.kind]);

function lengthLine(study: BusStudy): SummaryLine | undefined {
  const limit = lengthLimit(study);
  const length = limitedLength(study);
  return (
    limit && {
      ...sourceOf(limit),
      what: length === study.length ? 'length' : 'end to end',
      value: study.lengthText(length),
      limit: `at most ${study.lengthText(metres(limit.value))}`,
      share: length / limit.value,
    }
  );
}

/** The length that the rate allows, where the rate is what limits it. */
function rateLine(study: BusStudy): SummaryLine | undefined {
  const rate = study.bus.rate?.value;
  const limit = rate && lengthForRate(study.bus.kind, rate);
  if (!limit) return undefined;
  return {
    ...sourceOf(limit),
    what: `length at ${formatNumber(rate)} bit/s`,
    value: study.lengthText(study.length),
    limit: `at most ${study.lengthText(metres(limit.value))}`,
    share: study.length / limit.value,
  };
}

/** The tap that uses most of what the Modbus guide allows at its landing; nothing on a bus without taps. */
function tapLine({ bus, shape, lengthText }: BusStudy): SummaryLine | undefined {
  if (bus.kind !== 'modbus-rtu') return undefined;
  const own = shape.taps.filter(({ at, run }) => !shape.onTap.has(at) && bus.runs[run]!.to !== undefined);
  const limitAt = (landing: LandingIndex) => modbusTapLimit(own.filter(({ at }) => at === landing).length);
  const [worst] = own
    .map((tap) => ({ tap, limit: limitAt(tap.at) }))
    .sort((one, other) => other.tap.reach / other.limit.value - one.tap.reach / one.limit.value);
  if (!worst) return undefined;
  const { tap, limit } = worst;
  return {
    ...sourceOf(limit),
    what: 'longest tap',
    value: lengthText(tap.reach),
    limit: `at most ${lengthText(metres(limit.value))}`,
    share: tap.reach / limit.value,
  };
}

function loadLine(study: BusStudy): SummaryLine | undefined {
  const limit = loadLimit(study.bus);
  if (!limit) return undefined;
  const loads = study.unitLoads;
  return {
    ...sourceOf(limit),
    what: 'unit loads',
    value: isUnknown(loads) ? `unknown: ${loads.unknown}` : formatNumber(loads, 2),
    limit: `at most ${limit.value}`,
    ...(!isUnknown(loads) && { share: loads / limit.value }),
  };
}

function biasLine({ bus }: BusStudy): SummaryLine | undefined {
  const limit = biasLimit(bus.kind);
  return (
    limit && {
      ...sourceOf(limit),
      what: 'places that bias',
      value: String(bus.biases.length),
      limit: `at most ${limit.value}`,
      share: bus.biases.length / limit.value,
    }
  );
}

/** The landing that sees the least idle level; nothing while the bus is not biased. */
function idleLine({ bus, idle }: BusStudy): SummaryLine | undefined {
  if (bus.biases.length === 0 || !loadLimit(bus)) return undefined;
  const unknown = idle.find(isUnknown);
  const levels = idle.flatMap((level) => (isUnknown(level) ? [] : [level.nominal as number]));
  const least = levels.reduce((low, level) => Math.min(low, level), Number.POSITIVE_INFINITY);
  return {
    ...sourceOf(idleThreshold),
    what: 'least idle level',
    value: unknown ? `unknown: ${unknown.unknown}` : formatVolts(least as Volts),
    limit: `at least ${formatVolts(idleThreshold.value as Volts)}`,
    ...(!unknown && { share: 0 < least ? idleThreshold.value / least : Number.POSITIVE_INFINITY }),
  };
}

const sourceOf = ({ source, strength }: Limit) => ({ document: source, strength });
