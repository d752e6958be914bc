/** Which wire lies behind which fuse of a supply. */
import { outwardFrom } from '../../figures/outward.js';
import type { Limit } from '../../limits/limit.js';
import { conductorLimit } from '../../limits/power.js';
import type { Bus, LandingIndex, Run, SupplySource } from '../../network.js';
import { type Amperes, amperes } from '../../quantity.js';

/** The most current that a source can give for long, as it is marked. */
export function drawnLimit({ limit, voltage }: SupplySource): Amperes | undefined {
  if (!limit) return undefined;
  return 'amperes' in limit ? limit.amperes : amperes(limit.watts / voltage);
}

/** The run that a part of the supply is protected at, and the least that a wire of that part may carry. */
export interface Protected {
  readonly run: Run;
  readonly limit: Limit;
}

/** Each part that starts with a fuse; none in a ring, which is fed from both sides. */
export const thinnestBehind = (bus: Bus, source: LandingIndex): Protected[] =>
  parts(bus, source).flatMap(({ fused, thinnest }) =>
    fused && thinnest ? [{ run: fused, limit: thinnest.limit }] : [],
  );

/** The thinnest wire that no fuse lies before. */
export const thinnestUnfused = (bus: Bus, source: LandingIndex): Protected | undefined =>
  parts(bus, source).find(({ fused }) => !fused)?.thinnest;

interface Part {
  readonly fused?: Run;
  thinnest?: Protected;
}

/** The part without a fuse first. A fuse counts only at the end of its run that is nearer to the source. */
function parts(bus: Bus, source: LandingIndex): Part[] {
  const { order, parents, arrivals, ring } = outwardFrom(bus, source);
  if (ring) return [];
  const unfused: Part = {};
  const found = [unfused];
  const partOf = new Map<LandingIndex, Part>([[source, unfused]]);
  for (const landing of order) {
    const arrival = arrivals[landing];
    if (arrival === undefined) continue;
    const run = bus.runs[arrival]!;
    const parent = parents[landing]!;
    let part = partOf.get(parent) ?? unfused;
    if (run.fuse && run.from === parent) {
      part = { fused: run };
      found.push(part);
    }
    partOf.set(landing, part);
    const limit = run.cable && conductorLimit(run.cable);
    if (limit && limit.value < (part.thinnest?.limit.value ?? Number.POSITIVE_INFINITY)) part.thinnest = { run, limit };
  }
  return found;
}
