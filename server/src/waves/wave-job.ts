/** What goes to the simulating thread and comes back: plain data, copied between threads. */
import type { Bus, BusIndex, Known, Signal, Store, Unknown, WaveQuestion, Waves } from '@fieldpair/shared';

/** Questions about one bus of a store. */
export interface WaveJob {
  readonly store: Store;
  readonly bus: BusIndex;
  readonly questions: readonly WaveQuestion[];
}

/** For each job its answers, in the order of its questions. */
export type WaveAnswers = readonly (readonly (Waves | Unknown)[])[];

/** Waves as jobs ask for them, or the signal of a bus. */
export type WaveRequest = { readonly jobs: readonly WaveJob[] } | { readonly signalOf: Bus };

export type WaveReply =
  | { readonly answers: WaveAnswers }
  | { readonly signal: Known<Signal> }
  | { readonly failure: string };
