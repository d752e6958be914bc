/** Taps by the landing that they hang on, and how far one may reach by the edges of the drivers. */
import type { BusStudy, Tap } from '../../figures/study.js';
import { edgeTapShare } from '../../limits/tap.js';
import { speedOfLight } from '../../physics/delay.js';
import { type Metres, metres } from '../../quantity.js';

/**
 * The fastest driver whose edge the catalogue states decides; undefined when it states none, or no velocity.
 */
export function edgeTapLimit(
  { bus }: BusStudy,
  tap: Tap,
): { readonly limit: Metres; readonly edge: number } | undefined {
  const velocity = bus.runs[tap.run]!.cable?.velocity;
  const edges = bus.landings.flatMap(({ port }) => port?.edge ?? []);
  if (velocity === undefined || edges.length === 0) return undefined;
  const edge = edges.reduce((least, one) => Math.min(least, one), Number.POSITIVE_INFINITY);
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
