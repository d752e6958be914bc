/** The mentions of a landing in the text. */
import type { Landing, Run, Visit } from './network.js';

/**
 * The visit of a landing by the statement of a run; undefined where that leads elsewhere. Visits are in the order of the
 * text, and a text may land in one place a million times.
 */
export function visitBy({ visits }: Landing, { place: { start } }: Run): Visit | undefined {
  let first = 0;
  let last = visits.length - 1;
  while (first <= last) {
    const middle = (first + last) >> 1;
    const visit = visits[middle]!;
    if (visit.statementPlace.start === start) return visit;
    if (visit.statementPlace.start < start) first = middle + 1;
    else last = middle - 1;
  }
  return undefined;
}

/** Whether more is written with a mention than which landing it is: what would go with it. */
export const saysMore = ({ referencePlace, place }: Visit): boolean => referencePlace.end < place.end;
