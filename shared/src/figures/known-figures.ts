/** Figures as plain data: null where they are not known, with the reason noted. */
import { isUnknown, type Known, type Range } from '../known.js';

/** A figure over its tolerances; null where it is infinite. */
export interface RangeFigure {
  readonly nominal: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

/** Why figures are null, by the name of their field. */
export type Reasons = Readonly<Record<string, string>>;

/** Without the last digits, which binary fractions blur: nine are more than any figure is sure of. */
export const rounded = (value: number): number => Number(value.toPrecision(9));
const finite = (value: number): number | null => (Number.isFinite(value) ? rounded(value) : null);

/** A range with null where it is infinite; the reason notes that. */
export function rangeWhenKnown(
  figure: Known<Range<number>>,
  field: string,
  why: Record<string, string>,
): RangeFigure | null {
  const known = whenKnown(figure, field, why);
  if (known === null) return null;
  const range = { nominal: finite(known.nominal), low: finite(known.low), high: finite(known.high) };
  if (Object.values(range).includes(null)) why[field] = 'infinite: the pair is open to direct current';
  return range;
}

/** A number when it is known. */
export function numberWhenKnown(figure: Known<number>, field: string, why: Record<string, string>): number | null {
  const known = whenKnown(figure, field, why);
  return known === null ? null : rounded(known);
}

/** The figure when it is known, else null with its reason noted. */
export function whenKnown<T>(figure: Known<T>, field: string, why: Record<string, string>): T | null {
  if (!isUnknown(figure)) return figure;
  why[field] = figure.unknown;
  return null;
}

export const reasonsOf = (why: Reasons): { readonly unknown?: Reasons } =>
  Object.keys(why).length === 0 ? {} : { unknown: why };
