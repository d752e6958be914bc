/** Rows of what was measured beside what is wanted, and the statistics that they are made of. */

/** The value below which a share of all values lies. */
export function quantile(values, share) {
  const sorted = values.toSorted((left, right) => left - right);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))];
}

export const median = (values) => quantile(values, 0.5);

/** Milliseconds that a task takes, waited for. */
export async function timed(task) {
  const began = performance.now();
  await task();
  return performance.now() - began;
}

/**
 * Prints one row. With a limit it says whether the limit is kept; what is given as several values is shown as its
 * median and 95th percentile, and the latter is what the limit is for.
 */
export function row(what, measured, { unit = '', limit, digits = 0 } = {}) {
  const several = Array.isArray(measured);
  const value = several ? quantile(measured, 0.95) : measured;
  const shown = several
    ? `${median(measured).toFixed(digits)} / ${value.toFixed(digits)}`
    : typeof value === 'number'
      ? value.toFixed(digits)
      : value;
  const verdict =
    limit === undefined ? '' : `  ${value <= limit ? 'kept  ' : 'MISSED'} (at most ${limit}${unit && ` ${unit}`})`;
  console.log(`${what.padEnd(70)} ${`${shown}${unit && ` ${unit}`}`.padStart(18)}${verdict}`);
}
