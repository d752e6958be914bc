/** The figures of supplies and contact loops as plain data in SI units. */
import type { LandingIndex, LoopMeaning } from '../network.js';
import { type RangeFigure, type Reasons, rangeWhenKnown, reasonsOf, rounded } from './known-figures.js';
import { type BusStudy, isUnknown } from './study.js';

/** Each source of a supply with its loads, and the current of each run, in the order of the text. */
export interface SupplyFigures {
  readonly sources: readonly {
    readonly landing: string;
    readonly source_v: number;
    readonly form: 'ac' | 'dc' | null;
    readonly given_a: RangeFigure | null;
    readonly given_w: RangeFigure | null;
    readonly cable_w: RangeFigure | null;
    readonly limit_a: number | null;
    readonly limit_w: number | null;
    readonly unknown?: Reasons;
  }[];
  readonly runs: readonly {
    readonly from: string;
    readonly to: string | null;
    readonly current_a: RangeFigure | null;
    readonly unknown?: Reasons;
  }[];
}

/** What the input sees. `reads` is null where it states no readings, `unsure` between them. */
export interface ContactLoopFigures {
  readonly input: string | null;
  readonly cable_ohm: RangeFigure | null;
  readonly states: readonly {
    readonly state: string;
    readonly at: string | null;
    /** Null inside where the loop is open. */
    readonly ohm: RangeFigure;
    readonly reads: LoopMeaning | 'unsure' | null;
    /** Of one contact's alarm: whether the resistance tells which contact it is. */
    readonly told_apart?: boolean;
  }[];
  readonly unknown?: Reasons;
}

export function twoWireFigures(study: BusStudy): { supply?: SupplyFigures; contact_loop?: ContactLoopFigures } {
  if (study.bus.kind === 'supply') return { supply: supplyFigures(study) };
  return study.bus.kind === 'contact-loop' ? { contact_loop: loopFigures(study) } : {};
}

function supplyFigures({ bus, supply }: BusStudy): SupplyFigures {
  const nameOf = (index: LandingIndex) => bus.landings[index]!.name;
  if (isUnknown(supply)) return { sources: [], runs: [] };
  return {
    sources: supply.feeds.map(({ landing, source, given, power, heat }) => {
      const why: Record<string, string> = {};
      const { limit } = source;
      return {
        landing: landing.name,
        source_v: rounded(source.voltage),
        form: source.form ?? null,
        given_a: rangeWhenKnown(given, 'given_a', why),
        given_w: rangeWhenKnown(power, 'given_w', why),
        cable_w: rangeWhenKnown(heat, 'cable_w', why),
        limit_a: limit && 'amperes' in limit ? limit.amperes : null,
        limit_w: limit && 'watts' in limit ? limit.watts : null,
        ...reasonsOf(why),
      };
    }),
    runs: bus.runs.map((run) => {
      const why: Record<string, string> = {};
      return {
        from: nameOf(run.from),
        to: run.to === undefined ? null : nameOf(run.to),
        current_a: rangeWhenKnown(supply.amperes[run.index]!, 'current_a', why),
        ...reasonsOf(why),
      };
    }),
  };
}

function loopFigures({ bus, contactLoop: loop }: BusStudy): ContactLoopFigures {
  if (isUnknown(loop)) return { input: null, cable_ohm: null, states: [], unknown: { states: loop.unknown } };
  const why: Record<string, string> = {};
  return {
    input: loop.input.name,
    cable_ohm: rangeWhenKnown(loop.cable, 'cable_ohm', why),
    states: loop.states.map(({ state, landing, resistance, reading, toldApart }) => ({
      state,
      at: landing === undefined ? null : bus.landings[landing]!.name,
      ohm: rangeWhenKnown(resistance, 'ohm', {})!,
      reads: reading ?? null,
      ...(toldApart !== undefined && { told_apart: toldApart }),
    })),
    ...reasonsOf(why),
  };
}

/** What a landing of these kinds has beside the figures of any other. */
export function twoWireLanding(
  { bus, supply, contactLoop: loop }: BusStudy,
  index: LandingIndex,
  why: Record<string, string>,
): { supply_v?: RangeFigure | null; alarm_ohm?: RangeFigure | null } {
  if (bus.kind === 'supply' && !isUnknown(supply)) {
    return { supply_v: rangeWhenKnown(supply.volts[index]!, 'supply_v', why) };
  }
  if (bus.kind !== 'contact-loop' || !bus.landings[index]!.port?.contact) return {};
  const alarm = isUnknown(loop) ? loop : loop.alarmAt[index]?.resistance;
  return alarm ? { alarm_ohm: rangeWhenKnown(alarm, 'alarm_ohm', why) } : {};
}
