/** The cable of a bus as it leads away from one landing. */
import type { Bus, LandingIndex, RunIndex } from '../network.js';
import { across, incidenceOf } from './walk.js';

export interface Outward {
  /** The landing itself, then all that cable joins to it, each after the one that it is reached from. */
  readonly order: readonly LandingIndex[];
  /** Per landing: the one that it is reached from; -1 for the first and for those that nothing joins. */
  readonly parents: readonly number[];
  /** Per landing: the run by which it is reached. */
  readonly arrivals: readonly (RunIndex | undefined)[];
  /** Some landing can be reached in two ways. */
  readonly ring: boolean;
}

/** Breadth first, in the order of the text. */
export function outwardFrom(bus: Bus, root: LandingIndex): Outward {
  const incidence = incidenceOf(bus);
  const order = [root];
  const parents = new Array<number>(bus.landings.length).fill(-1);
  const arrivals = new Array<RunIndex | undefined>(bus.landings.length).fill(undefined);
  const reached = new Set(order);
  let ring = false;
  for (const landing of order) {
    for (let slot = incidence.starts[landing]!; slot < incidence.starts[landing + 1]!; slot++) {
      const run = incidence.runs[slot]!;
      if (arrivals[landing] === run) continue;
      const next = across(bus.runs[run]!, landing);
      if (reached.has(next)) {
        ring = true;
        continue;
      }
      reached.add(next);
      parents[next] = landing;
      arrivals[next] = run;
      order.push(next);
    }
  }
  return { order, parents, arrivals, ring };
}
