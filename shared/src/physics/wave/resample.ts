/** A waveform between and beyond its points. */

/** A waveform as evenly spaced points: 0 before the first one, `end` after the last one. */
export interface Sampled {
  readonly start: number;
  readonly spacing: number;
  readonly row: Float64Array;
  readonly end: number;
}

/** Its values at `from`, `from + step` and so on, by cubics through four points (Lagrange). */
export function resampled(
  { start, spacing, row, end }: Sampled,
  from: number,
  step: number,
  count: number,
): Float64Array {
  const values = new Float64Array(count);
  const last = row.length - 1;
  const perStep = step / spacing;
  const offset = (from - start) / spacing;
  for (let index = 0; index < count; index++) {
    const position = offset + index * perStep;
    if (position < 0) continue;
    if (last <= position) {
      values[index] = end;
      continue;
    }
    const floor = Math.floor(position);
    const share = position - floor;
    const one = row[floor]!;
    const two = floor < last ? row[floor + 1]! : end;
    const before = 0 < floor ? row[floor - 1]! : 0;
    const after = floor + 1 < last ? row[floor + 2]! : end;
    values[index] =
      one +
      share *
        ((two - before) / 2 -
          (after - 3 * two + 3 * one - before) / 6 +
          share * ((before - 2 * one + two) / 2 + (share * (after - 3 * two + 3 * one - before)) / 6));
  }
  return values;
}

/** When it first reaches a level, from whichever side it starts; undefined when it never does. */
export function firstReaching({ start, spacing, row }: Sampled, level: number): number | undefined {
  const rising = 0 < level;
  for (let point = 0; point < row.length; point++) {
    const value = row[point]!;
    if (rising ? value < level : level < value) continue;
    const before = 0 < point ? row[point - 1]! : 0;
    const share = value === before ? 1 : (level - before) / (value - before);
    return start + (point - 1 + Math.min(1, Math.max(0, share))) * spacing;
  }
  return undefined;
}

/** When it last leaves a band around its end: from then on it stays within. */
export function lastLeaving({ start, spacing, row, end }: Sampled, band: number): number {
  let point = row.length - 1;
  while (0 <= point && Math.abs(row[point]! - end) <= band) point--;
  return start + (point + 1) * spacing;
}
