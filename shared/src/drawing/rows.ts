/**
 * Where the stops of a strand stand: on rows as wide as the paper, evenly or to scale. A row that is full goes on in
 * the next one, as text does.
 *
 * Each stop has a card, and a row has room for so many cards side by side. To scale, the stops stand where the cable
 * has run so far, and their cards as near to them as the other cards let them, in the same order.
 */
import type { Metres } from '../quantity.js';
import type { Stop, Strand } from './strands.js';

export interface PlacedStop {
  readonly stop: Stop;
  readonly row: number;
  /** Where it is on the line. */
  readonly x: number;
  /** The middle of its card. */
  readonly card: number;
  /** The middles of the cards of what hangs at it. */
  readonly hanging: readonly number[];
}

/** The space that rows have. */
export interface Page {
  readonly left: number;
  readonly right: number;
  /** The width of a card with the gap to the next one. */
  readonly pitch: number;
}

/** How many cards go side by side. */
export const cardsPerRow = ({ left, right, pitch }: Page): number => Math.max(1, Math.floor((right - left) / pitch));

/** All stops of a strand, in its order. */
export type Placing = (strand: Strand) => PlacedStop[];

/** Every stop as far from the next one as any other. */
export function evenly(page: Page): Placing {
  const most = cardsPerRow(page);
  const middleOf = (column: number) => page.left + (column + 0.5) * page.pitch;
  return ({ stops }) => {
    let row = 0;
    let column = 0;
    return stops.map((stop) => {
      const span = Math.max(1, stop.hanging.length);
      if (0 < column && most < column + span) {
        row++;
        column = 0;
      }
      const x = middleOf(column);
      const hanging = stop.hanging.map((_, index) => middleOf(column + index));
      column += span;
      return { stop, row, x, card: x, hanging };
    });
  };
}

/** More rows than this many times what the cards alone need are no drawing any more. */
const mostThinning = 4;

/**
 * Every stop at its distance along the strand, all strands to one scale; undefined when the lengths differ so much that
 * the cards would not find room.
 *
 * @param isLaden whether something sits on the landing itself; two such stops keep half a card between them
 * @returns the placing and how many pixels stand for a metre
 */
export function toScale(
  page: Page,
  strands: readonly Strand[],
  isLaden: (stop: Stop) => boolean,
): { readonly place: Placing; readonly pixelsPerMetre: number } | undefined {
  const most = cardsPerRow(page);
  const distances = new Map(strands.map((strand) => [strand, distancesOf(strand)]));
  let longest = 0;
  for (const all of distances.values()) longest = Math.max(longest, all.at(-1) ?? 0);
  if (!(0 < longest && longest < 1e6)) return undefined;
  let cards = 0;
  for (const { stops } of strands)
    cards = Math.max(
      cards,
      stops.reduce((sum, stop) => sum + cardsAt(stop), 0),
    );
  const fewest = Math.ceil(cards / most);
  // A tenth more at a time, so that a bus of thousands of landings is not tried thousands of times.
  for (let rows = fewest; rows <= fewest * mostThinning + 1; rows = Math.max(rows + 1, Math.ceil(rows * 1.1))) {
    const perRow = longest / rows;
    if (!strands.every((strand) => fits(strand, distances.get(strand) ?? [], perRow, most))) continue;
    const pixelsPerMetre = (page.right - page.left - page.pitch) / perRow;
    const spots = (strand: Strand) => spotsOf(strand, distances.get(strand) ?? [], perRow, page, pixelsPerMetre);
    if (
      strands.every((strand) =>
        keepsApart(
          spots(strand).filter(({ stop }) => isLaden(stop)),
          page,
        ),
      )
    ) {
      return { place: (strand) => withCards(spots(strand), page), pixelsPerMetre };
    }
  }
  return undefined;
}

function distancesOf({ stops }: Strand): number[] {
  let distance = 0;
  return stops.map(({ run }) => {
    distance += run?.length ?? (0 as Metres);
    return distance;
  });
}

const cardsAt = ({ hanging }: Stop) => Math.max(1, hanging.length);

/** The row of a distance; one at the very end of a row stays on it. */
const rowOf = (distance: number, perRow: number) => Math.max(0, Math.ceil(distance / perRow - 1 - 1e-9));

function fits({ stops }: Strand, distances: readonly number[], perRow: number, most: number): boolean {
  const below = new Map<number, number>();
  const above = new Map<number, number>();
  for (const [index, { hanging }] of stops.entries()) {
    const row = rowOf(distances[index] ?? 0, perRow);
    below.set(row, (below.get(row) ?? 0) + 1);
    above.set(row, (above.get(row) ?? 0) + hanging.length);
  }
  return [...below.values(), ...above.values()].every((count) => count <= most);
}

type Spot = Pick<PlacedStop, 'stop' | 'row' | 'x'>;

const keepsApart = (laden: readonly Spot[], { pitch }: Page): boolean =>
  laden.every(({ row, x }, index) => {
    const before = laden[index - 1];
    return !before || before.row !== row || pitch / 2 + 12 <= x - before.x;
  });

function spotsOf(
  { stops }: Strand,
  distances: readonly number[],
  perRow: number,
  page: Page,
  pixelsPerMetre: number,
): Spot[] {
  return stops.map((stop, index) => {
    const distance = distances[index] ?? 0;
    const row = rowOf(distance, perRow);
    return { stop, row, x: page.left + page.pitch / 2 + (distance - row * perRow) * pixelsPerMetre };
  });
}

function withCards(spots: readonly Spot[], page: Page): PlacedStop[] {
  const result: PlacedStop[] = [];
  for (let start = 0; start < spots.length; ) {
    const row = spots[start]?.row;
    let end = start;
    while (end < spots.length && spots[end]?.row === row) end++;
    const onRow = spots.slice(start, end);
    const cards = spread(
      onRow.map(({ x }) => x),
      page,
    );
    const hanging = spread(
      onRow.flatMap(({ x, stop }) => stop.hanging.map(() => x)),
      page,
    );
    let taken = 0;
    for (const [index, spot] of onRow.entries()) {
      const own = hanging.slice(taken, taken + spot.stop.hanging.length);
      taken += own.length;
      result.push({ ...spot, card: cards[index] ?? spot.x, hanging: own });
    }
    start = end;
  }
  return result;
}

/**
 * Middles of cards as near to where they are wanted as they can be without meeting: groups that would overlap are put
 * around the mean of what their members want (the pool-adjacent-violators way of isotonic regression).
 */
export function spread(wanted: readonly number[], { left, right, pitch }: Page): number[] {
  const groups: { sum: number; count: number }[] = [];
  for (const [index, x] of wanted.entries()) {
    let group = { sum: x - index * pitch, count: 1 };
    for (let last = groups.at(-1); last && group.sum / group.count < last.sum / last.count; last = groups.at(-1)) {
      groups.pop();
      group = { sum: group.sum + last.sum, count: group.count + last.count };
    }
    groups.push(group);
  }
  const first = left + pitch / 2;
  const last = Math.max(first, right - pitch / 2 - (wanted.length - 1) * pitch);
  const starts = groups.flatMap(({ sum, count }) => new Array<number>(count).fill(sum / count));
  return starts.map((start, index) => Math.min(last, Math.max(first, start)) + index * pitch);
}
