/** The line that a bus belongs to: repeaters pass every bit on, so that the buses that they join answer as one. */
import type { Bus, Landing, Store } from '../network.js';

export const isRepeater = ({ node }: Landing): boolean => node?.device?.role === 'repeater';

/** The buses of a store that repeaters join to this one, in the order of the text; the bus alone where there are none. */
export function lineOf(store: Store, bus: Bus): readonly Bus[] {
  if (!bus.landings.some(isRepeater)) return [bus];
  const line = new Set([bus]);
  // A set that grows while it is walked is walked to its end.
  for (const member of line) {
    for (const landing of member.landings) {
      if (!isRepeater(landing)) continue;
      for (const other of store.buses) {
        if (other.kind === bus.kind && other.landings.some(({ node }) => node === landing.node)) line.add(other);
      }
    }
  }
  return store.buses.filter((one) => line.has(one));
}
