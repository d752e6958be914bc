/**
 * The figures of one bus as plain data in SI units, as `fieldpair figures --format json` prints them.
 *
 * A figure that cannot be computed is null and `unknown` says why. Inside a range null means infinite, which is what an
 * open pair reads; `unknown` tells that too.
 */
import { isIncomplete, type LandingIndex } from '../network.js';
import { gapBetweenFrames, gapWithinFrame, usualPoll } from '../physics/modbus.js';
import { cycleOf } from './cycle.js';
import { type KindFigures, kindFigures } from './kind-figures.js';
import {
  numberWhenKnown,
  type RangeFigure,
  type Reasons,
  rangeWhenKnown,
  reasonsOf,
  rounded,
  whenKnown,
} from './known-figures.js';
import type { BusStudy } from './study.js';
import { type ContactLoopFigures, type SupplyFigures, twoWireFigures, twoWireLanding } from './two-wire-figures.js';

export type { RangeFigure, Reasons } from './known-figures.js';

export interface LandingFigures {
  readonly landing: string;
  readonly address: number | null;
  /** The area of the store that it is written under; null where there is none. */
  readonly area: string | null;
  /** Along the cable from the bus's first landing. */
  readonly distance_m: number | null;
  readonly meter_ohm: RangeFigure | null;
  readonly idle_v: RangeFigure | null;
  readonly driven_v: RangeFigure | null;
  readonly delay_ns: number | null;
  /** At a landing of a supply. */
  readonly supply_v?: RangeFigure | null;
  /** At a contact of a loop: what the input sees when it alone is in alarm. */
  readonly alarm_ohm?: RangeFigure | null;
  readonly unknown?: Reasons;
}

/** Silences of Modbus RTU and a cycle that polls every device of the line once, for stated assumptions. */
export interface ModbusFigures {
  readonly gap_within_frame_s: number;
  readonly gap_between_frames_s: number;
  readonly poll_cycle_s: number;
  readonly polled_devices: number;
  /** The buses that repeaters join to one line, this one too; left out where there are none. */
  readonly line?: readonly string[];
  readonly assumed: { readonly registers: number; readonly reply_delay_s: number };
}

/** The token once around every master, none of which has anything to send. */
export interface TokenFigures {
  readonly masters: number;
  readonly token_cycle_s: number;
  /** As in {@link ModbusFigures}. */
  readonly line?: readonly string[];
}

export interface BusFigures extends KindFigures {
  readonly bus: string;
  readonly kind: string | null;
  /** Some of its text was not understood: these are the figures of the rest. Left out where all of it was. */
  readonly incomplete?: true;
  readonly length_m: number;
  /** Out and back between the two ends, terminators aside. */
  readonly loop_resistance_ohm: number | null;
  readonly loop_resistance_range_ohm: RangeFigure | null;
  readonly unit_loads: number | null;
  readonly ends: readonly [string, string] | null;
  readonly bit_time_s: number | null;
  readonly modbus?: ModbusFigures;
  readonly mstp?: TokenFigures;
  readonly supply?: SupplyFigures;
  readonly contact_loop?: ContactLoopFigures;
  readonly landings: readonly LandingFigures[];
  readonly unknown?: Reasons;
}

export function busFigures(study: BusStudy): BusFigures {
  const { bus, shape } = study;
  const why: Record<string, string> = {};
  const loop = rangeWhenKnown(study.loopResistance, 'loop_resistance_ohm', why);
  const nameOf = (landing: LandingIndex) => bus.landings[landing]!.name;
  if (!shape.ends) why.ends = 'the bus is no single chain with two ends';
  if (bus.kind === undefined) why.kind = 'the kind of the bus';
  return {
    bus: bus.name,
    kind: bus.kind ?? null,
    ...(isIncomplete(bus) && { incomplete: true }),
    length_m: rounded(study.length),
    loop_resistance_ohm: loop?.nominal ?? null,
    loop_resistance_range_ohm: loop,
    unit_loads: numberWhenKnown(study.unitLoads, 'unit_loads', why),
    ends: shape.ends ? ([nameOf(shape.ends[0]), nameOf(shape.ends[1])] as const) : null,
    bit_time_s: numberWhenKnown(study.bitTime, 'bit_time_s', why),
    ...protocolFigures(study),
    ...kindFigures(study),
    ...twoWireFigures(study),
    landings: bus.landings.map(({ index }) => landingFigures(study, index)),
    ...reasonsOf(why),
  };
}

function landingFigures(study: BusStudy, index: LandingIndex): LandingFigures {
  const { name, address, area } = study.bus.landings[index]!;
  const why: Record<string, string> = {};
  const distance = study.shape.distance[index];
  if (distance === undefined) why.distance_m = `no cable leads here from ${study.bus.landings[0]!.name}`;
  const delay = whenKnown(study.delay[index]!, 'delay_ns', why);
  return {
    landing: name,
    address: address?.value ?? null,
    area: area?.value ?? null,
    distance_m: distance === undefined ? null : rounded(distance),
    meter_ohm: rangeWhenKnown(study.meter[index]!, 'meter_ohm', why),
    idle_v: rangeWhenKnown(study.idle[index]!, 'idle_v', why),
    driven_v: rangeWhenKnown(study.driven[index]!, 'driven_v', why),
    delay_ns: delay === null ? null : rounded(delay * 1e9),
    ...twoWireLanding(study, index, why),
    ...reasonsOf(why),
  };
}

function protocolFigures(study: BusStudy): { modbus?: ModbusFigures; mstp?: TokenFigures } {
  const rate = study.bus.rate?.value;
  const cycle = cycleOf(study);
  if (rate === undefined || !cycle) return {};
  const { devices, time, line } = cycle;
  const joined = line.length === 1 ? {} : { line: line.map(({ name }) => name) };
  if (study.bus.kind === 'bacnet-mstp') return { mstp: { masters: devices, token_cycle_s: rounded(time), ...joined } };
  return {
    modbus: {
      gap_within_frame_s: rounded(gapWithinFrame(rate)),
      gap_between_frames_s: rounded(gapBetweenFrames(rate)),
      poll_cycle_s: rounded(time),
      polled_devices: devices,
      ...joined,
      assumed: { registers: usualPoll.registers, reply_delay_s: usualPoll.replyDelay },
    },
  };
}
