/** Taps by the landing that they hang on, and how far one may reach by the edges of the drivers. */
import type { BusStudy, Tap } from '../../figures/study.js';
import { edgeTapShare } from '../../limits/tap.js';
import type { Bus } from '../../network.js';
import { speedOfLight } from '../../physics/delay.js';
import { type Metres, metres } from '../../quantity.js';

/** The fastest edge of each bus that was asked about, in seconds; infinite where the catalogue states none. */
const fastestEdges = new WeakMap<Bus, number>();

function fastestEdge(bus: Bus): number {
  let fastest = fastestEdges.get(bus);
  if (fastest === undefined) {
    fastest = Number.POSITIVE_INFINITY;
    for (const { port } of bus.landings) fastest = Math.min(fastest, port?.edge ?? Number.POSITIVE_INFINITY);
    fastestEdges.set(bus, fastest);
  }
  return fastest;
}

/**
 * The fastest driver whose edge the catalogue states decides; undefined when it states none, or no velocity.
 */
export function edgeTapLimit(
  { bus }: BusStudy,
  tap: Tap,
): { readonly limit: Metres; readonly edge: number } | undefined {
  const velocity = bus.runs[tap.run]!.cable?.velocity;
  if (velocity === undefined) return undefined;
  const edge = fastestEdge(bus);
  if (!Number.isFinite(edge)) return undefined;
  return { limit: metres(edgeTapShare.value * edge * velocity * speedOfLight), edge };
}

/** Taps that hang on the trunk and lead somewhere, by the landing they hang on. What hangs behind them is their part. */
export function tapsByLanding({ bus, shape }: BusStudy): Map<number, Tap[]> {
  const groups = new Map<number, Tap[]>();
  for (const tap of shape.taps) {
    const run = bus.runs[tap.run]!;
    if (run.to === undefined || run.to === run.from || shape.onTap.has(tap.at)) continue;
    const group = groups.get(tap.at);
    if (group) group.push(tap);
    else groups.set(tap.at, [tap]);
  }
  return groups;
}

/** Lengths that were converted from feet may differ from the limit in the last bits. */
export const exceeds = (length: number, limit: number): boolean => limit * (1 + 1e-9) < length;
