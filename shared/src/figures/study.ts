/**
 * Everything that is computed about one bus, each figure once and only when somebody asks.
 *
 * Rules, hovers, hints, the command line and documents all read a bus through its study, so that no number is
 * computed in two ways. A study belongs to one frozen network and is dropped with it.
 */
import type { Bus, Landing, LandingIndex, Run, RunIndex, Store } from '../network.js';
import type { Metres, Ohms, Ratio, Seconds, Volts } from '../quantity.js';

/** A figure with the least and the most that it can be over the stated tolerances. */
export interface Range<T extends number> {
  readonly nominal: T;
  readonly low: T;
  readonly high: T;
}

/** Why a figure cannot be computed: a clause that can follow 'unknown: ' and names what is missing. */
export interface Unknown {
  readonly unknown: string;
}
export type Known<T> = T | Unknown;
export function isUnknown(value: unknown): value is Unknown {
  return typeof value === 'object' && value !== null && 'unknown' in value;
}

/** The shape of a bus: what is connected to what, and where it ends. Spare runs do not count. */
export interface Shape {
  /** Groups of connected landings; the first holds the bus's first landing, the others are islands. */
  readonly components: readonly (readonly LandingIndex[])[];
  /** Per landing: which component. */
  readonly componentOf: readonly number[];
  /** Per landing: runs that meet there and are no taps. */
  readonly trunkDegree: readonly number[];
  /** Runs that close a loop, in the order of the text. */
  readonly closing: readonly RunIndex[];
  /** Landings where three or more trunk cables meet. */
  readonly branches: readonly LandingIndex[];
  /** Landings on a tap: reached from the trunk only through tap runs. */
  readonly onTap: ReadonlySet<LandingIndex>;
  /**
   * The two ends when the bus is one plain chain (one component, no loop, no branch), else undefined. A bus with a
   * single landing has none.
   */
  readonly ends?: readonly [LandingIndex, LandingIndex];
  /** The trunk's landings from the first end to the second, when it has ends. */
  readonly trunk: readonly LandingIndex[];
  /** Along the cable from the bus's first landing, shortest way; undefined on islands. */
  readonly distance: readonly (Metres | undefined)[];
  /** Taps: each tap run with the trunk landing it hangs on and everything behind it. */
  readonly taps: readonly Tap[];
}

export interface Tap {
  readonly run: RunIndex;
  /** Where it leaves the trunk (or the tap before it). */
  readonly at: LandingIndex;
  /** Its longest way from the trunk, further taps behind it included. */
  readonly reach: Metres;
  /** All cable of the tap and behind it. */
  readonly total: Metres;
}

export interface BusStudy {
  readonly store: Store;
  readonly bus: Bus;
  readonly shape: Shape;
  /** Sum of all runs, taps too, spares not. */
  readonly length: Metres;
  /** The landing of the device with the role `head`, the first if several. */
  readonly head: Landing | undefined;
  readonly heads: readonly Landing[];
  /** Resistance of one conductor of a run at the bus's temperature. */
  runResistance(run: Run): Known<Range<Ohms>>;
  /** Time that the wave needs through a run. */
  runDelay(run: Run): Known<Seconds>;
  /** Out and back between the two ends, terminators aside. */
  readonly loopResistance: Known<Range<Ohms>>;
  /** Sum of the unit loads of all ports; unknown names the devices that state none. */
  readonly unitLoads: Known<Ratio>;
  /** What an ohmmeter reads across the pair at each landing with everything connected and nothing powered. */
  readonly meter: readonly Known<Range<Ohms>>[];
  /** Plus minus minus with every driver off, at each landing; 0 where nothing biases. */
  readonly idle: readonly Known<Range<Volts>>[];
  /** Propagation delay from the bus's first landing. */
  readonly delay: readonly Known<Seconds>[];
  /** Time of one bit; unknown without a rate. */
  readonly bitTime: Known<Seconds>;
  /** A length in the unit of this bus's text (or of the reader's choice). */
  lengthText(length: Metres): string;
}
