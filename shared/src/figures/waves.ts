/**
 * What the wave looks like at every landing of a bus while one of its landings drives, and what margin it leaves.
 *
 * How it is computed, how well it agrees with a circuit simulator and what it leaves out is told in
 * physics/wave/step-response.ts.
 */
import { isUnknown, type Range, type Unknown } from '../known.js';
import type { LandingIndex } from '../network.js';
import { busWaves } from '../physics/wave/bus-waves.js';
import { cornersInWords, extremeWaves, type GradedCorner, nominalWave } from '../physics/wave/corners.js';
import type { Fault } from '../physics/wave/fault.js';
import { type BitsPerSecond, type Ratio, ratio, type Seconds, type Volts } from '../quantity.js';
import type { BusStudy } from './study.js';
import { assumptionsOf, landingFigures, patternOf, stepOf, whyStopped } from './wave-figures.js';
import { waveSettingOf } from './wave-setting.js';

export type { Fault } from '../physics/wave/fault.js';
export { defaultPattern } from './wave-setting.js';

/** What is asked of a bus. Only the driver must be said. */
export interface WaveQuestion {
  readonly driver: LandingIndex;
  /** Instead of the bus's rate. */
  readonly rate?: BitsPerSecond;
  /** 10 to 90 % transition time of the driver, instead of what its port states. */
  readonly edge?: Seconds;
  /** Bits that are driven, as 0 and 1, the first one long before; `defaultPattern` when left out. At most 4096. */
  readonly pattern?: string;
  /** What is wrong beyond what the text says. */
  readonly faults?: readonly Fault[];
  /** Points in each bit of the pattern, 4 to 256; 32 when left out. */
  readonly samples?: number;
  /**
   * Computes no edge faster than a hundredth of the level: for margins, which differ by less than 2 % of the swing (95 %
   * of them by less than 0.2 %) and cost less. What an edge rings like does not show then.
   */
  readonly coarse?: boolean;
  /** Only the waveforms and figures as stated, not the best and worst over tolerances: four times as fast. */
  readonly nominalOnly?: boolean;
}

/**
 * Voltages are plus minus minus as the device at each landing sees them: a crossed landing sees the opposite. On an
 * RS-485 pair 1 drives plus above minus; on CAN 0 is dominant and drives CAN_H above CAN_L, and for 1 the driver lets
 * go.
 */
export interface Waves {
  readonly driver: LandingIndex;
  readonly bitTime: Seconds;
  /**
   * The driver's 10 to 90 % transition, whether it is assumed because the catalogue states none, and the slowest that
   * is regarded then.
   */
  readonly edge: { readonly time: Seconds; readonly assumed: boolean; readonly slowest: Seconds };
  /** A level at or above `high` and one at or below `low` are read for certain; what lies between may be read as either. */
  readonly threshold: { readonly high: Volts; readonly low: Volts };
  /**
   * When a receiver samples, as a share of the bit after the bit's edge arrives: the usual, earliest and latest instant;
   * of a bit of two levels, in the second.
   */
  readonly samplingAt: Range<Ratio>;
  /**
   * One change from a long 0 to a long 1 (CAN: from recessive to dominant). Time 0 is when the driver's edge is at half of
   * its swing; `volts` has one row a landing.
   */
  readonly step: { readonly time: Float64Array; readonly volts: readonly Float64Array[] };
  /**
   * The bits as driven. The first one was there long before; time 0 is the border between it and the second, where the
   * driver's edge is at half of its swing. `volts` has one row a landing.
   */
  readonly pattern: { readonly bits: string; readonly time: Float64Array; readonly volts: readonly Float64Array[] };
  readonly landings: readonly LandingWave[];
  /** Why the answer ends before the bus has come to rest, when it does: a sentence. */
  readonly stopped?: string;
  /** What low and high were varied over, in words; empty with `nominalOnly`. */
  readonly corners: readonly string[];
  /** Assumptions that stand for what the catalogue does not state, in words. */
  readonly assumptions: readonly string[];
}

export interface LandingWave {
  readonly landing: LandingIndex;
  readonly name: string;
  /** From the driver's edge to this landing's, both at half of their swing. */
  readonly delay: Seconds;
  /** From the driver's edge, at half of its swing, until this landing stays within 5 % of its own swing. */
  readonly settling: Seconds;
  /** By what share of its swing the step shoots over where it ends. */
  readonly overshoot: Ratio;
  /** The lesser of the two settled levels, as a size: what the receiver has once all has come to rest. */
  readonly level: Range<Volts>;
  /** The longest share of the bit through which every pattern of bits is read for certain. */
  readonly opening: Range<Ratio>;
  /**
   * The least by which the level lies beyond the receiver's threshold at the sampling instants, over every pattern of
   * bits; negative when some pattern may be misread.
   */
  readonly margin: Range<Volts>;
  /** No cable leads here from the driver, or faults cut it off. The other figures then mean nothing. */
  readonly cutOff: boolean;
}

const shareOfBit = ({ nominal, low, high }: Range<Ratio>, levels: 1 | 2): Range<Ratio> => {
  const share = (ofLevel: Ratio) => ratio((levels - 1 + ofLevel) / levels);
  return { nominal: share(nominal), low: share(low), high: share(high) };
};

/** The waves of a bus, or the reason why they cannot be told. It throws at nothing and takes bounded time. */
export function wavesOf(study: BusStudy, question: WaveQuestion): Waves | Unknown {
  const setting = waveSettingOf(study, question);
  if (isUnknown(setting)) return setting;
  const { waveBus, signalling, bitTime, edge, receiver } = setting;
  const compute = ({ corner, driver, edge: time }: GradedCorner) =>
    busWaves(waveBus, corner, signalling.drivers[driver], signalling.driven, time);
  const nominal = compute(nominalWave(edge.time));
  const extremes = question.nominalOnly ? [] : extremeWaves([edge.time, edge.slowest], signalling.driven).map(compute);
  const landings = study.bus.landings.map(({ index, name }) => {
    const cutOff = waveBus.nodes[index] === -1;
    return { landing: index, name, cutOff, ...landingFigures(nominal, extremes, index, receiver) };
  });
  const stopped = whyStopped(nominal, extremes, landings, setting);
  return {
    driver: question.driver,
    bitTime,
    edge,
    threshold: signalling.threshold,
    samplingAt: shareOfBit(receiver.samplingAt, signalling.levelsPerBit),
    step: stepOf(nominal),
    pattern: patternOf(nominal, setting, question.samples),
    landings,
    ...(stopped !== undefined && { stopped }),
    corners: question.nominalOnly ? [] : cornersInWords,
    assumptions: assumptionsOf(study, setting),
  };
}
