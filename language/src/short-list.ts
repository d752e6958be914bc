/** Lists that mostly hold nothing, one or two things, of which a network has thousands. */

/** The list of everything that has none; shared, so never pushed to. */
export const none: readonly never[] = [];

/**
 * A list with one thing more, to be used instead of the old one. Pushing to an empty array would reserve room for
 * seventeen.
 */
export function added<T>(list: readonly T[], one: T): readonly T[] {
  if (list.length === 0) return [one];
  if (list.length === 1) return [list[0]!, one];
  (list as T[]).push(one);
  return list;
}
