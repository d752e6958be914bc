/** Which taps are longer than they may be, alone or together. */

import { isHealthy } from '../../figures/bus-margin.js';
import type { BusStudy, Tap } from '../../figures/study.js';
import type { Severity } from '../../finding.js';
import { isUnknown } from '../../known.js';
import { segmentForm, segmentStub } from '../../limits/free-topology.js';
import { severityOf } from '../../limits/limit.js';
import { modbusTapLimit, modbusTapShare } from '../../limits/tap.js';
import type { LandingIndex } from '../../network.js';
import { formatRate, formatSeconds, type Metres, metres, seconds } from '../../quantity.js';
import { edgeTapLimit, exceeds, tapsByLanding } from './tap-limits.js';

export interface TapVerdict {
  /** The limit that is broken, as a clause. */
  readonly limit: string;
  readonly severity: Severity;
  readonly shorten: boolean;
}

/** The limit that a tap breaks, or undefined when it keeps it or none is known. @param count of taps at its landing */
export function tapVerdict(study: BusStudy, tap: Tap, count: number): TapVerdict | undefined {
  const { kind } = study.bus;
  const over = (limit: number) => `(${study.lengthText(metres(tap.reach - limit))} over)`;
  if (kind === 'bacnet-mstp') return { limit: 'an MS/TP bus has no taps', severity: 'warning', shorten: false };
  if (kind === 'modbus-rtu') {
    const limit = modbusTapLimit(count);
    if (!exceeds(tap.reach, limit.value)) return undefined;
    return {
      limit: `${study.lengthText(metres(limit.value))} is ${limit.meaning} ${over(limit.value)}`,
      severity: severityOf(limit),
      shorten: true,
    };
  }
  if (kind === 'can') {
    const { rate } = study.bus;
    const limit = rate && study.canGuide.stub(rate.value);
    if (!rate || limit === undefined || !exceeds(tap.reach, limit)) return undefined;
    return {
      limit: `${study.lengthText(limit)} is the most for a stub at ${formatRate(rate.value)} ${over(limit)}`,
      severity: 'warning',
      shorten: true,
    };
  }
  if (kind === 'free-topology') {
    const { value, meaning } = segmentStub;
    if (segmentForm(study) !== 'bus' || !exceeds(tap.reach, value)) return undefined;
    return {
      limit: `${study.lengthText(metres(value))} is ${meaning} ${over(value)}`,
      severity: 'error',
      shorten: true,
    };
  }
  const advice = edgeTapLimit(study, tap);
  if (!advice || !exceeds(tap.reach, advice.limit)) return undefined;
  return {
    limit: `${study.lengthText(advice.limit)} is advised for drivers with an edge of ${formatSeconds(seconds(advice.edge))} ${over(advice.limit)}`,
    // The advice holds at any rate; where the echoes are gone when receivers sample, it is no more than a note.
    severity: isUnknown(study.signal) || !isHealthy(study.signal.righted) ? 'warning' : 'info',
    shorten: true,
  };
}

/** Taps that are short enough each and too long together: those of a landing on Modbus, of the bus on CAN. */
export interface TapSum {
  /** Undefined for the whole bus. */
  readonly at?: LandingIndex;
  readonly taps: readonly Tap[];
  readonly total: Metres;
  readonly limit: Metres;
}

export function tapSums(study: BusStudy): TapSum[] {
  const { bus, canGuide } = study;
  if (bus.kind === 'modbus-rtu') {
    return [...tapsByLanding(study)].flatMap(([at, taps]) =>
      sumsOver(taps, modbusTapLimit(taps.length).value, modbusTapShare.value).map((sum) => ({ at, ...sum })),
    );
  }
  const rate = bus.rate?.value;
  if (bus.kind !== 'can' || rate === undefined) return [];
  const stubs = [...tapsByLanding(study).values()].flat();
  return sumsOver(stubs, canGuide.stub(rate) ?? Number.POSITIVE_INFINITY, canGuide.stubSum(rate));
}

function sumsOver(taps: readonly Tap[], longest: number, limit: number | undefined): TapSum[] {
  if (limit === undefined || taps.some(({ reach }) => exceeds(reach, longest))) return [];
  const total = metres(taps.reduce((sum, tap) => sum + tap.total, 0));
  return exceeds(total, limit) ? [{ taps, total, limit: metres(limit) }] : [];
}

/** Whether a finding tells of taps that are too long, alone or together. */
export function tapsAreTold(study: BusStudy): boolean {
  if (study.shape.taps.length === 0) return false;
  const alone = [...tapsByLanding(study).values()].some((taps) =>
    taps.some((tap) => tapVerdict(study, tap, taps.length)),
  );
  return alone || 0 < tapSums(study).length;
}
