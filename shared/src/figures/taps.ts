/** Taps: the runs that the text calls so, and everything behind them. */
import type { Bus, LandingIndex, RunIndex } from '../network.js';
import { type Metres, metres } from '../quantity.js';
import { across, type Incidence, joins } from './walk.js';

export interface Tap {
  readonly run: RunIndex;
  /** Where it leaves the trunk (or the tap before it). */
  readonly at: LandingIndex;
  /** Its longest way from there, further taps behind it included. */
  readonly reach: Metres;
  /** All cable of the tap and behind it. */
  readonly total: Metres;
}

/**
 * Per landing 1 when it is on the trunk: reached from its component's first landing without any tap run. Everything
 * else lies behind a tap.
 */
export function trunkLandings(
  bus: Bus,
  incidence: Incidence,
  components: readonly (readonly LandingIndex[])[],
): Uint8Array {
  const onTrunk = new Uint8Array(bus.landings.length);
  for (const component of components) {
    const open = [component[0]!];
    onTrunk[component[0]!] = 1;
    for (let landing = open.pop(); landing !== undefined; landing = open.pop()) {
      for (let slot = incidence.starts[landing]!; slot < incidence.starts[landing + 1]!; slot++) {
        const run = bus.runs[incidence.runs[slot]!]!;
        const next = across(run, landing);
        if (run.tap || onTrunk[next]) continue;
        onTrunk[next] = 1;
        open.push(next);
      }
    }
  }
  return onTrunk;
}

/**
 * Every tap run with what hangs behind it. What lies behind taps is walked breadth first from the trunk; a run that
 * closes a loop there counts as cable that hangs at its nearer landing.
 */
export function tapsOf(bus: Bus, incidence: Incidence, onTrunk: Uint8Array): Tap[] {
  const count = bus.landings.length;
  const arrival = new Int32Array(count).fill(-1);
  const order: LandingIndex[] = [];
  for (let landing = 0; landing < count; landing++) if (onTrunk[landing]) order.push(landing);
  const trunkCount = order.length;
  const position = new Int32Array(count);
  for (let walked = 0; walked < order.length; walked++) {
    const landing = order[walked]!;
    position[landing] = walked;
    for (let slot = incidence.starts[landing]!; slot < incidence.starts[landing + 1]!; slot++) {
      const run = bus.runs[incidence.runs[slot]!]!;
      const next = across(run, landing);
      if (onTrunk[next] || arrival[next] !== -1) continue;
      arrival[next] = run.index;
      order.push(next);
    }
  }
  // Cable that ends nowhere or closes a loop hangs at a landing without leading to another.
  const reach = new Float64Array(count);
  const total = new Float64Array(count);
  const hangsAt = new Map<RunIndex, LandingIndex>();
  for (const run of bus.runs) {
    if (run.spare || (joins(run) && (arrival[run.to!] === run.index || arrival[run.from] === run.index))) continue;
    const nearer = run.to === undefined || position[run.from]! <= position[run.to]! ? run.from : run.to;
    if (run.tap) hangsAt.set(run.index, nearer);
    if (onTrunk[nearer]) continue;
    reach[nearer] = Math.max(reach[nearer]!, run.length);
    total[nearer]! += run.length;
  }
  for (let walked = order.length - 1; trunkCount <= walked; walked--) {
    const landing = order[walked]!;
    const run = bus.runs[arrival[landing]!]!;
    const at = across(run, landing);
    reach[at] = Math.max(reach[at]!, run.length + reach[landing]!);
    total[at]! += run.length + total[landing]!;
  }
  const taps: Tap[] = [];
  for (const run of bus.runs) {
    if (!run.tap || run.spare) continue;
    const hanging = hangsAt.get(run.index);
    if (hanging !== undefined) {
      taps.push({ run: run.index, at: hanging, reach: run.length, total: run.length });
      continue;
    }
    const landing = arrival[run.to!] === run.index ? run.to! : run.from;
    taps.push({
      run: run.index,
      at: across(run, landing),
      reach: metres(run.length + reach[landing]!),
      total: metres(run.length + total[landing]!),
    });
  }
  return taps;
}
