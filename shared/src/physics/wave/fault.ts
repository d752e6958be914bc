/**
 * What may be wrong with a bus that was wired otherwise than its text says. The simulation lays faults over the bus as
 * it is written; the text stays as it is.
 */
import type { Cable, LandingIndex, RunIndex, Termination } from '../../network.js';
import type { Metres, Ohms, Ratio } from '../../quantity.js';

export type Fault =
  /** All terminators of a landing are other ones: none, one of another value, or several. */
  | { readonly kind: 'terminators'; readonly landing: LandingIndex; readonly terminations: readonly Termination[] }
  /** Both wires of a run are broken, at a share of its length from where it starts. */
  | { readonly kind: 'open'; readonly run: RunIndex; readonly at: Ratio }
  /** The wires of a run touch, at a share of its length from where it starts. */
  | { readonly kind: 'short'; readonly run: RunIndex; readonly at: Ratio; readonly resistance: Ohms }
  /** The pair is the other way round at a landing than the text says. */
  | { readonly kind: 'crossed'; readonly landing: LandingIndex }
  /** A run, such as a tap, is of another length. */
  | { readonly kind: 'length'; readonly run: RunIndex; readonly length: Metres }
  /** A run is of another cable. */
  | { readonly kind: 'cable'; readonly run: RunIndex; readonly cable: Cable };
