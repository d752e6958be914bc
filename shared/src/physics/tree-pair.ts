/**
 * A pair without loops, solved by two sweeps: from the leaves inwards and back out, each landing hands to the next
 * what it and everything behind it amounts to (Norton's equivalent). Linear in the number of landings.
 *
 * Both wires of a run resist alike, so that the sweeps can work on the differential and the common mode,
 * d = (plus - minus)/sqrt 2 and c = (plus + minus)/sqrt 2, which a run does not mix. What hangs at a landing is then
 * [dd dc; dc cc]: terminators are in dd alone, and neither a joint nor a wire without any way to common needs care.
 */
import { gapOhms } from './nodal.js';
import type { Pair, PairCurrents, PairValues } from './pair.js';

/** Admittance and driven current of the two modes at every landing. */
interface Modes {
  readonly dd: number[];
  readonly dc: number[];
  readonly cc: number[];
  readonly d: number[];
  readonly c: number[];
}

export class TreePair implements Pair {
  /**
   * @param order every landing after the one that it hangs on
   * @param parents per landing: the landing that it hangs on, or -1
   * @param parentRuns per landing: the run to that landing, or -1
   */
  constructor(
    private readonly order: readonly number[],
    private readonly parents: readonly number[],
    private readonly parentRuns: readonly number[],
  ) {}

  resistances(values: PairValues): number[] {
    const { dd, dc, cc } = this.sweep(values, undefined);
    return dd.map((own, landing) => {
      const resistance = 2 / differential(own, dc[landing]!, cc[landing]!);
      return resistance < gapOhms ? resistance : Number.POSITIVE_INFINITY;
    });
  }

  differences(values: PairValues, currents: PairCurrents): number[] {
    const { dd, dc, cc, d, c } = this.sweep(values, currents);
    return dd.map((own, landing) => {
      const common = cc[landing]!;
      const conductance = differential(own, dc[landing]!, common);
      if (conductance < 1 / gapOhms) return 0;
      const current = 0 < common ? d[landing]! - (dc[landing]! * c[landing]!) / common : d[landing]!;
      return (Math.SQRT2 * current) / conductance;
    });
  }

  /** What hangs at every landing, the whole rest of the bus included. */
  private sweep(values: PairValues, currents: PairCurrents | undefined): Modes {
    const { order, parents, parentRuns } = this;
    const total = modesAt(values, currents);
    const handed = emptyModes(order.length);
    for (let position = order.length - 1; 0 < position; position--) {
      const landing = order[position]!;
      const parent = parents[landing]!;
      if (parent === -1) continue;
      const { dd, dc, cc, d, c } = total;
      hand(
        handed,
        landing,
        values.resistances[parentRuns[landing]!]!,
        dd[landing]!,
        dc[landing]!,
        cc[landing]!,
        d[landing]!,
        c[landing]!,
      );
      add(total, parent, handed, landing);
    }
    const returned = emptyModes(order.length);
    for (const landing of order) {
      const parent = parents[landing]!;
      if (parent === -1) continue;
      // All that hangs at the parent but this landing's own share; rounding must not make it negative.
      const dd = Math.max(0, total.dd[parent]! - handed.dd[landing]!);
      const cc = Math.max(0, total.cc[parent]! - handed.cc[landing]!);
      const dc = dd === 0 || cc === 0 ? 0 : total.dc[parent]! - handed.dc[landing]!;
      const d = total.d[parent]! - handed.d[landing]!;
      const c = total.c[parent]! - handed.c[landing]!;
      hand(returned, landing, values.resistances[parentRuns[landing]!]!, dd, dc, cc, d, c);
      add(total, landing, returned, landing);
    }
    return total;
  }
}

/** Conductance of the differential mode while the common mode is left to itself. */
function differential(dd: number, dc: number, cc: number): number {
  return 0 < cc ? Math.max(0, dd - (dc * dc) / cc) : dd;
}

const zeros = (length: number): number[] => new Array<number>(length).fill(0);

const emptyModes = (count: number): Modes => ({
  dd: zeros(count),
  dc: zeros(count),
  cc: zeros(count),
  d: zeros(count),
  c: zeros(count),
});

/** What hangs at each landing itself. */
function modesAt({ across, plusToCommon, minusToCommon }: PairValues, currents: PairCurrents | undefined): Modes {
  const modes = emptyModes(across.length);
  for (let landing = 0; landing < across.length; landing++) {
    const plus = plusToCommon[landing]!;
    const minus = minusToCommon[landing]!;
    modes.cc[landing] = (plus + minus) / 2;
    modes.dd[landing] = 2 * across[landing]! + (plus + minus) / 2;
    modes.dc[landing] = (plus - minus) / 2;
    if (!currents) continue;
    modes.d[landing] = (currents.plus[landing]! - currents.minus[landing]!) / Math.SQRT2;
    modes.c[landing] = (currents.plus[landing]! + currents.minus[landing]!) / Math.SQRT2;
  }
  return modes;
}

/** Hands the equivalent of something through a run of a resistance: Y' = (1 + R Y)^-1 Y, J' = (1 + R Y)^-1 J. */
function hand(
  into: Modes,
  slot: number,
  resistance: number,
  dd: number,
  dc: number,
  cc: number,
  d: number,
  c: number,
): void {
  // Nothing passes a gap. What was there stays zero.
  if (!(resistance < gapOhms)) return;
  const determinant = Math.max(0, dd * cc - dc * dc);
  const divisor = 1 + resistance * (dd + cc) + resistance * resistance * determinant;
  into.dd[slot] = (dd + resistance * determinant) / divisor;
  into.dc[slot] = dc / divisor;
  into.cc[slot] = (cc + resistance * determinant) / divisor;
  into.d[slot] = ((1 + resistance * cc) * d - resistance * dc * c) / divisor;
  into.c[slot] = ((1 + resistance * dd) * c - resistance * dc * d) / divisor;
}

function add(to: Modes, target: number, from: Modes, source: number): void {
  to.dd[target]! += from.dd[source]!;
  to.dc[target]! += from.dc[source]!;
  to.cc[target]! += from.cc[source]!;
  to.d[target]! += from.d[source]!;
  to.c[target]! += from.c[source]!;
}
