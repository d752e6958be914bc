/** What goes to the simulating thread and comes back: plain data, copied between threads. */
import type {
  Bus,
  BusIndex,
  Known,
  LandingIndex,
  Signal,
  Store,
  Unknown,
  WaveAdvice,
  WaveQuestion,
  Waves,
} from '@fieldpair/shared';

/** Questions about one bus of a store. */
export interface WaveJob {
  readonly store: Store;
  readonly bus: BusIndex;
  readonly questions: readonly WaveQuestion[];
}

/** For each job its answers, in the order of its questions. */
export type WaveAnswers = readonly (readonly (Waves | Unknown)[])[];

/** A bus of a store, and the landing that drives it. */
export interface AdviceJob {
  readonly store: Store;
  readonly bus: BusIndex;
  readonly driver: LandingIndex;
}

/** Waves as jobs ask for them, the signal of a bus, or advice on one. */
export type WaveRequest =
  | { readonly jobs: readonly WaveJob[] }
  | { readonly signalOf: Bus }
  | { readonly adviseOn: AdviceJob };

export type WaveReply =
  | { readonly answers: WaveAnswers }
  | { readonly signal: Known<Signal> }
  | { readonly advice: Known<WaveAdvice> }
  | { readonly failure: string };
