/** The figures of CAN, free topology and Ethernet as plain data in SI units. */
import { leastCanLoad } from '../limits/can.js';
import { segmentForm, segmentLimits, unclassedCables } from '../limits/free-topology.js';
import { lengthLimit, limitedLength } from '../limits/length.js';
import { loopDelayOf, propagation, samplePointOf, wireReach } from '../physics/can.js';
import {
  numberWhenKnown,
  type RangeFigure,
  type Reasons,
  rangeWhenKnown,
  reasonsOf,
  rounded,
  whenKnown,
} from './known-figures.js';
import { linkDelay, linkResistance } from './links.js';
import type { BusStudy } from './study.js';

export interface CanFigures {
  /** Where in the bit it is sampled, as a share. */
  readonly sample_point: number;
  /** There and back between the two devices where it takes longest, and what is left of the bit before its sample. */
  readonly propagation_s: number | null;
  readonly propagation_slack_s: number | null;
  readonly propagation_between: readonly [string, string] | null;
  /** What the two transceivers take; the usual most where `loop_delays_assumed`. */
  readonly loop_delays_s: readonly [number, number] | null;
  readonly loop_delays_assumed: boolean;
  /** End to end, and the most for the rate by the guide in use. */
  readonly line_m: number;
  readonly line_limit_m: number | null;
  /** As far as the level reaches on its conductors. */
  readonly wire_reach_m: number | null;
  readonly least_driver_load_ohm: number;
  readonly unknown?: Reasons;
}

export interface FreeTopologyFigures {
  readonly form: 'free' | 'bus';
  readonly devices: number;
  readonly farthest_m: number | null;
  readonly farthest_between: readonly [string, string] | null;
  /** The limits of the cable's class; null where a class is unknown. */
  readonly bus_limit_m: number | null;
  readonly apart_limit_m: number | null;
  readonly total_limit_m: number | null;
  readonly unknown?: Reasons;
}

export interface EthernetFigures {
  readonly links: readonly {
    readonly from: string;
    readonly to: string;
    /** Fixed cable, and all cords of the link where they are stated. */
    readonly length_m: number;
    readonly cords_m: number | null;
    readonly loop_resistance_ohm: RangeFigure | null;
    readonly delay_ns: number | null;
    readonly unknown?: Reasons;
  }[];
}

export interface KindFigures {
  readonly can?: CanFigures;
  readonly free_topology?: FreeTopologyFigures;
  readonly ethernet?: EthernetFigures;
}

export function kindFigures(study: BusStudy): KindFigures {
  switch (study.bus.kind) {
    case 'can':
      return { can: canFigures(study) };
    case 'free-topology':
      return { free_topology: segmentFigures(study) };
    case 'ethernet':
      return { ethernet: { links: study.links.map((link) => linkFigures(study, link)) } };
    default:
      return {};
  }
}

function canFigures(study: BusStudy): CanFigures {
  const why: Record<string, string> = {};
  const found = whenKnown(propagation(study), 'propagation_s', why) ?? undefined;
  const limit = lengthLimit(study);
  if (!limit) why['line_limit_m'] = 'the rate of the bus, or the guide has none for it';
  return {
    sample_point: samplePointOf(study.bus),
    propagation_s: found ? rounded(found.time) : null,
    propagation_slack_s: found ? rounded(found.slack) : null,
    propagation_between: found ? [found.from.name, found.to.name] : null,
    loop_delays_s: found ? [loopDelayOf(found.from), loopDelayOf(found.to)] : null,
    loop_delays_assumed: [found?.from, found?.to].some((landing) => landing && landing.port?.delay === undefined),
    line_m: rounded(limitedLength(study)),
    line_limit_m: limit ? rounded(limit.value) : null,
    wire_reach_m: numberWhenKnown(wireReach(study), 'wire_reach_m', why),
    least_driver_load_ohm: leastCanLoad.value,
    ...reasonsOf(why),
  };
}

function segmentFigures(study: BusStudy): FreeTopologyFigures {
  const { bus, farthest } = study;
  const why: Record<string, string> = {};
  const way = whenKnown(farthest, 'farthest_m', why) ?? undefined;
  const unclassed = unclassedCables(bus);
  const limits = unclassed.length === 0 ? segmentLimits(bus) : undefined;
  if (!limits) why['total_limit_m'] = `the class of ${unclassed.join(', ')}`;
  return {
    form: segmentForm(study),
    devices: bus.landings.filter(({ node }) => node).length,
    farthest_m: way ? rounded(way.length) : null,
    farthest_between: way ? [bus.landings[way.from]!.name, bus.landings[way.to]!.name] : null,
    bus_limit_m: limits?.bus ?? null,
    apart_limit_m: limits?.apart ?? null,
    total_limit_m: limits?.total ?? null,
    ...reasonsOf(why),
  };
}

function linkFigures(study: BusStudy, link: BusStudy['links'][number]): EthernetFigures['links'][number] {
  const why: Record<string, string> = {};
  const delay = whenKnown(linkDelay(study, link), 'delay_ns', why);
  return {
    from: study.bus.landings[link.from]!.name,
    to: study.bus.landings[link.to]!.name,
    length_m: rounded(link.length),
    cords_m: link.cords === undefined ? null : rounded(link.cords),
    loop_resistance_ohm: rangeWhenKnown(linkResistance(study, link), 'loop_resistance_ohm', why),
    delay_ns: delay === null ? null : rounded(delay * 1e9),
    ...reasonsOf(why),
  };
}
