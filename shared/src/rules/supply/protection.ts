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

/** A run and what its wire may carry. */
export interface Wire {
  readonly run: Run;
  readonly limit: Limit;
}

/** The wire behind a fuse, up to the next fuse. */
export interface FusedPart {
  /** With the fuse. */
  readonly run: Run;
  readonly thinnest: Wire;
}

/** Each part that starts with a fuse; none in a ring, which is fed from both sides. */
export const thinnestBehind = (bus: Bus, source: LandingIndex): FusedPart[] =>
  parts(bus, source).flatMap(({ fused, thinnest }) => (fused && thinnest ? [{ run: fused, thinnest }] : []));

/** The thinnest wire that no fuse lies before. */
export const thinnestUnfused = (bus: Bus, source: LandingIndex): Wire | undefined =>
  parts(bus, source).find(({ fused }) => !fused)?.thinnest;

interface Part {
  readonly fused?: Run;
  thinnest?: Wire;
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

/** The largest fuse that a fused run may have for the wire behind it; as large as one likes where nothing is known. */
export function mostBehind(bus: Bus, run: Run): number {
  const source = bus.landings.find(({ port }) => port?.supplies);
  const behind = source && thinnestBehind(bus, source.index).find((part) => part.run === run);
  return behind?.thinnest.limit.value ?? Number.POSITIVE_INFINITY;
}
