/** Sampled curves made ready for drawing: few points, and yet the same picture. */

/** A curve over time; both arrays are equally long and time never falls. */
export interface Samples {
  /** Seconds. */
  readonly time: ArrayLike<number>;
  /** Volts, plus minus minus. */
  readonly volts: ArrayLike<number>;
}

export type Point = readonly [x: number, y: number];

/**
 * The points of a curve in pixels, as few as give the same picture.
 *
 * Of the samples in one column of pixels the first, the least, the greatest and the last stay (the M4 aggregation of
 * Jugel, Jerzak, Hackenbroich and Markl, VLDB 2014, which proves that a line chart loses nothing by it), so no peak is
 * lost. Then points go that lie within a quarter of a pixel of the line between their neighbours. Samples that are not
 * finite are left out.
 */
export function pixelPoints(
  samples: Samples,
  toX: (seconds: number) => number,
  toY: (volts: number) => number,
): Point[] {
  return withoutStraights(byColumn(samples, toX, toY));
}

function byColumn({ time, volts }: Samples, toX: (seconds: number) => number, toY: (volts: number) => number): Point[] {
  const points: Point[] = [];
  let column = Number.NaN;
  let [first, least, greatest, last] = [-1, -1, -1, -1];
  const flush = () => {
    if (first < 0) return;
    const kept = new Set([first, Math.min(least, greatest), Math.max(least, greatest), last]);
    for (const index of kept) points.push([toX(time[index]!), toY(volts[index]!)]);
  };
  for (let index = 0; index < time.length; index++) {
    const value = volts[index]!;
    const x = Math.floor(toX(time[index]!));
    if (!Number.isFinite(value) || !Number.isFinite(x)) continue;
    if (x !== column) {
      flush();
      column = x;
      first = least = greatest = index;
    }
    if (value < volts[least]!) least = index;
    if (volts[greatest]! < value) greatest = index;
    last = index;
  }
  flush();
  return points;
}

/** What nobody sees, in pixels. */
const invisible = 0.25;

/**
 * Drops points that the line between the points around them passes closely enough. Each stretch is widened from its
 * first point while one slope stays within reach of every point on it, so the cost is linear.
 */
function withoutStraights(points: readonly Point[]): Point[] {
  if (points.length < 3) return [...points];
  const kept: Point[] = [points[0]!];
  let anchor = points[0]!;
  let [steepest, flattest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let index = 1; index < points.length; index++) {
    const [x, y] = points[index]!;
    const run = x - anchor[0];
    const slope = (y - anchor[1]) / run;
    const fits = 0 < run && flattest <= slope && slope <= steepest;
    if (!fits && 1 < index) {
      anchor = points[index - 1]!;
      if (anchor !== kept.at(-1)) kept.push(anchor);
      [steepest, flattest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    }
    const width = x - anchor[0];
    if (0 < width) {
      steepest = Math.min(steepest, (y + invisible - anchor[1]) / width);
      flattest = Math.max(flattest, (y - invisible - anchor[1]) / width);
    } else {
      // Straight up: nothing after it lies on one line with it.
      [steepest, flattest] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    }
  }
  kept.push(points.at(-1)!);
  return kept;
}

/** The level at a moment, between the samples around it; undefined outside of them. */
export function levelAt({ time, volts }: Samples, moment: number): number | undefined {
  const last = time.length - 1;
  if (last < 0 || !(time[0]! <= moment && moment <= time[last]!)) return undefined;
  let [low, high] = [0, last];
  while (1 < high - low) {
    const middle = (low + high) >> 1;
    if (time[middle]! <= moment) low = middle;
    else high = middle;
  }
  const span = time[high]! - time[low]!;
  const share = 0 < span ? (moment - time[low]!) / span : 1;
  const level = volts[low]! + (volts[high]! - volts[low]!) * share;
  return Number.isFinite(level) ? level : undefined;
}
