/** Fuses that can be bought, and fixes that fit one. */
import type { Fix } from '../../finding.js';
import { isUnknown } from '../../known.js';
import type { Bus, Run } from '../../network.js';
import type { Supply } from '../../physics/supply.js';
import { amperes, formatAmperes } from '../../quantity.js';

/** Ratings that panels are usually fused with. Common practice, no published source. */
const ratings = [0.25, 0.5, 1, 1.5, 2, 3, 4, 5, 7, 10, 15, 20, 25, 30];

/** A fuse that stands what flows in a run at the worst and is no larger than the wire behind it allows. */
export function fuseFixes(bus: Bus, run: Run, supply: Supply, most: number): Fix[] {
  const current = supply.amperes[run.index]!;
  if (isUnknown(current)) return [];
  const rating = ratings.findLast((size) => size <= most);
  if (rating === undefined || rating < current.high) return [];
  // With a wire that carries much, the smallest fuse that stands the load will do.
  const chosen = ratings.find((size) => 1.25 * current.high <= size) ?? rating;
  const size = Math.min(chosen, rating);
  const where = `the run to ${bus.landings[run.to ?? run.from]!.name}`;
  return [
    {
      title: `Fuse ${where} with ${formatAmperes(amperes(size))}`,
      safe: false,
      edits: [{ kind: 'set-fuse', bus: bus.index, run: run.index, amperes: amperes(size) }],
    },
  ];
}
