/**
 * The waveforms of one bus as plain data in SI units, as `fieldpair wave --format json` prints them.
 *
 * `landings` has a row for each landing of the bus; the samples of its waveforms belong to `time_s` of the same kind.
 * Figures of a landing that is cut off from the driver mean nothing and are null.
 */

import type { Range } from '../known.js';
import type { BusStudy } from './study.js';
import type { LandingWave, Waves } from './waves.js';

export interface WaveRange {
  readonly nominal: number;
  readonly low: number;
  readonly high: number;
}

export interface LandingWaveRecord {
  readonly landing: string;
  readonly cut_off: boolean;
  readonly delay_s: number | null;
  readonly settling_s: number | null;
  /** Share of the swing. */
  readonly overshoot: number | null;
  readonly level_v: WaveRange | null;
  /** Share of the bit. */
  readonly opening: WaveRange | null;
  readonly margin_v: WaveRange | null;
  readonly step_v: readonly (number | null)[];
  readonly pattern_v: readonly (number | null)[];
}

export interface WaveRecord {
  readonly bus: string;
  readonly kind: string | null;
  readonly driver: string;
  readonly rate_bit_per_s: number;
  readonly bit_time_s: number;
  readonly edge_s: number;
  readonly edge_assumed: boolean;
  readonly threshold_v: { readonly low: number; readonly high: number };
  /** Share of the bit. */
  readonly sampling_at: WaveRange;
  readonly step: { readonly time_s: readonly number[] };
  /** The first bit was there long before time 0; the second begins at 0. */
  readonly pattern: { readonly bits: string; readonly time_s: readonly number[] };
  readonly landings: readonly LandingWaveRecord[];
  readonly assumptions: readonly string[];
  readonly varied: readonly string[];
  readonly stopped: string | null;
}

export function waveRecord({ bus }: BusStudy, waves: Waves): WaveRecord {
  const { step, pattern } = waves;
  return {
    bus: bus.name,
    kind: bus.kind ?? null,
    driver: bus.landings[waves.driver]!.name,
    rate_bit_per_s: rounded(1 / waves.bitTime),
    bit_time_s: rounded(waves.bitTime),
    edge_s: rounded(waves.edge.time),
    edge_assumed: waves.edge.assumed,
    threshold_v: { low: rounded(waves.threshold.low), high: rounded(waves.threshold.high) },
    sampling_at: rangeOf(waves.samplingAt),
    step: { time_s: Array.from(step.time, rounded) },
    pattern: { bits: pattern.bits, time_s: Array.from(pattern.time, rounded) },
    landings: waves.landings.map((one) => landingRecord(waves, one)),
    assumptions: waves.assumptions,
    varied: waves.corners,
    stopped: waves.stopped ?? null,
  };
}

function landingRecord({ step, pattern }: Waves, one: LandingWave): LandingWaveRecord {
  const known = <T>(value: T): T | null => (one.cutOff ? null : value);
  return {
    landing: one.name,
    cut_off: one.cutOff,
    delay_s: known(rounded(one.delay)),
    settling_s: known(rounded(one.settling)),
    overshoot: known(rounded(one.overshoot)),
    level_v: known(rangeOf(one.level)),
    opening: known(rangeOf(one.opening)),
    margin_v: known(rangeOf(one.margin)),
    step_v: Array.from(step.volts[one.landing] ?? [], sample),
    pattern_v: Array.from(pattern.volts[one.landing] ?? [], sample),
  };
}

/** Six figures are more than a simulation is sure of. */
const rounded = (value: number): number => Number(value.toPrecision(6));
const rangeOf = ({ nominal, low, high }: Range<number>): WaveRange => ({
  nominal: rounded(nominal),
  low: rounded(low),
  high: rounded(high),
});
/** A sample to a hundredth of a millivolt. */
const sample = (volts: number): number | null => (Number.isFinite(volts) ? Math.round(volts * 1e5) / 1e5 : null);
