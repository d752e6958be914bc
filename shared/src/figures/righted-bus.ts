/** A bus as it would be with its ends terminated as they should be: what is wrong besides shows on it. */
import { dueTermination, isTerminatedWell } from '../limits/due-terminator.js';
import { limitedLength } from '../limits/length.js';
import type { Bus, Landing } from '../network.js';
import type { BusStudy } from './study.js';

export interface Righted {
  readonly righted: Bus;
  /** Whose terminators were wrong, as they were. */
  readonly faulty: readonly Landing[];
  /** Whether anything was crossed. */
  readonly uncrossed: boolean;
}

/**
 * The bus with the terminator that is due at each end that has none or an unworkable one, none elsewhere, and nothing
 * crossed. A bus without two ends stays as it is.
 */
export function rightedBusOf(study: BusStudy): Righted {
  const { bus, shape } = study;
  const { ends } = shape;
  if (!ends) return { righted: bus, faulty: [], uncrossed: false };
  const length = limitedLength(study);
  const faulty: Landing[] = [];
  let uncrossed = false;
  const landings = bus.landings.map((landing) => {
    const { crossed, ...upright } = landing;
    const isEnd = ends.includes(landing.index);
    const isRight = isEnd ? isTerminatedWell(bus, landing, length) : landing.terminations.length === 0;
    if (!isRight) faulty.push(landing);
    if (isRight && crossed === undefined) return landing;
    uncrossed ||= crossed !== undefined;
    const due = isEnd ? [{ means: 'resistor' as const, ...dueTermination(bus, landing) }] : [];
    return { ...upright, terminations: isRight ? landing.terminations : due };
  });
  const changed = uncrossed || 0 < faulty.length;
  return { righted: changed ? { ...bus, landings } : bus, faulty, uncrossed };
}
