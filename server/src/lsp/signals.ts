/**
 * Has the signals of buses simulated meanwhile, for rules that ask for them while they check: each once its text has
 * rested, in a thread of its own, one bus after the other. Until an answer is there the last one stands.
 */
import { createHash } from 'node:crypto';
import { type Bus, type BusStudy, bareBus, hasWaves, type Known, type Signal, signalPending } from '@fieldpair/shared';
import type { WaveRunner } from '../waves/wave-runner.js';
import { type ToldSignal, told } from './told-signal.js';

/** How long nobody may have typed before a simulation starts, in milliseconds. */
const usualPause = 300;
/** Answers that are kept; each is a few hundred bytes. */
const mostKept = 2000;
const task = 'rules';

/** Where a bus is written. */
export interface BusPlace {
  readonly file: string;
  readonly store: string;
  readonly bus: string;
}

/** A bus that waits for its simulation. Not the bus itself: thousands of closed stores may wait. */
interface Wanted extends BusPlace {
  readonly key: string;
}

/** Somebody who wants to go on once the buses of some files, or all, are done. */
interface Waiting {
  readonly files: ReadonlySet<string> | undefined;
  readonly done: () => void;
}

export interface SignalsHost {
  readonly runner: Pick<WaveRunner, 'askSignal' | 'stop'>;
  readonly isOpen: (file: string) => boolean;
  /** The bus as it is written now, if it still is. */
  readonly busAt: (place: BusPlace) => Bus | undefined;
  /** A bus of this file has another signal than before. */
  readonly changed: (file: string) => void;
  readonly failed: (error: unknown) => void;
  readonly pause?: number;
}

export class Signals {
  readonly #host: SignalsHost;
  /** By what the signal depends on; the ones that were used last stand at the end. */
  readonly #answers = new Map<string, Known<Signal>>();
  /** What rules were told last, by store and bus. */
  readonly #told = new Map<string, ToldSignal>();
  readonly #wanted = new Map<string, Wanted>();
  /** The bus that is being simulated. */
  #running: string | undefined;
  /** No simulation starts before this moment, in milliseconds of the process's own clock. */
  #restsUntil = 0;
  #timer: NodeJS.Timeout | undefined;
  #waiting: readonly Waiting[] = [];

  constructor(host: SignalsHost) {
    this.#host = host;
  }

  /** What is known of a bus's signal at once; what is not known is simulated soon. */
  readonly of = ({ store, bus }: BusStudy): Known<Signal> => {
    if (!hasWaves(bus)) return { unknown: `the signal of a ${bus.kind} bus` };
    const { file } = bus.blockPlace;
    const name = `${file}\n${store.name}\n${bus.name}`;
    const key = keyOf(bareBus(bus));
    const answer = this.#answers.get(key);
    if (answer) {
      this.#answers.delete(key);
      this.#answers.set(key, answer);
      this.#forget(name);
      // Only of what somebody may be typing does the last answer stand.
      if (this.#host.isOpen(file)) {
        this.#told.set(name, { signal: answer, names: bus.landings.map((landing) => landing.name) });
      } else this.#told.delete(name);
      return answer;
    }
    if (this.#wanted.get(name)?.key !== key) {
      this.#forget(name);
      this.#wanted.set(name, { key, file, store: store.name, bus: bus.name });
      this.rest();
    }
    return told(this.#told.get(name), bus) ?? signalPending;
  };

  /** Whether any bus waits for its simulation. */
  get isBusy(): boolean {
    return 0 < this.#wanted.size;
  }

  /** Resolves when no bus of these files, or of any, waits any more; they do not wait for typing to pause then. */
  settled(files?: ReadonlySet<string>): Promise<void> {
    return new Promise((done) => {
      this.#waiting = [...this.#waiting, { files, done }];
      this.#release();
      if (this.#waiting.length) this.#schedule();
    });
  }

  /** Puts the next simulation off: somebody is typing, or buses are still being checked. */
  rest(): void {
    this.#restsUntil = performance.now() + (this.#host.pause ?? usualPause);
    if (this.isBusy) this.#schedule();
  }

  /** A bus is not wanted any more as it was: what runs for it is stopped. */
  #forget(name: string): void {
    if (!this.#wanted.delete(name)) return;
    if (this.#running === name) this.#host.runner.stop(task);
    this.#schedule();
  }

  #schedule(): void {
    const patience = this.#waiting.length ? 0 : Math.max(0, this.#restsUntil - performance.now());
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#next(), patience);
  }

  async #next(): Promise<void> {
    if (this.#running !== undefined) return;
    this.#release();
    const [name, wanted] = this.#nearest() ?? [];
    if (name === undefined || !wanted) return;
    const bare = this.#asWanted(wanted);
    if (!bare) {
      // It was written otherwise meanwhile, or is gone; whoever checks it asks again.
      this.#wanted.delete(name);
      this.#schedule();
      return;
    }
    this.#running = name;
    const answer = await this.#simulated(bare);
    this.#running = undefined;
    if (answer) {
      this.#keep(wanted.key, answer);
      if (this.#wanted.get(name) === wanted) {
        this.#wanted.delete(name);
        this.#host.changed(wanted.file);
      }
    }
    this.#schedule();
  }

  /** The bus as it was when it was asked about; undefined where it is not written like that any more. */
  #asWanted(wanted: Wanted): Bus | undefined {
    try {
      const bus = this.#host.busAt(wanted);
      const bare = bus && bareBus(bus);
      return bare && keyOf(bare) === wanted.key ? bare : undefined;
    } catch (error) {
      this.#host.failed(error);
      return undefined;
    }
  }

  /** Lets those go on whose buses are done. */
  #release(): void {
    const files = new Set([...this.#wanted.values()].map(({ file }) => file));
    const waits = ({ files: own }: Waiting) => (own ? [...own].some((file) => files.has(file)) : 0 < files.size);
    const released = this.#waiting.filter((one) => !waits(one));
    this.#waiting = this.#waiting.filter(waits);
    for (const { done } of released) done();
  }

  /** Buses that somebody waits for first, then those of open files. */
  #nearest(): readonly [string, Wanted] | undefined {
    const all = [...this.#wanted];
    const awaited = ({ file }: Wanted) => this.#waiting.some(({ files }) => files?.has(file));
    return all.find(([, wanted]) => awaited(wanted)) ?? all.find(([, { file }]) => this.#host.isOpen(file)) ?? all[0];
  }

  /** Undefined when it was stopped. What fails is told once, and the bus goes without. */
  async #simulated(bus: Bus): Promise<Known<Signal> | undefined> {
    try {
      return await this.#host.runner.askSignal(task, bus);
    } catch (error) {
      this.#host.failed(error);
      return { unknown: 'the signal: its simulation failed' };
    }
  }

  #keep(key: string, answer: Known<Signal>): void {
    this.#answers.set(key, answer);
    for (const oldest of this.#answers.keys()) {
      if (this.#answers.size <= mostKept) break;
      this.#answers.delete(oldest);
    }
  }
}

/** Of all that the signal depends on, which takes kilobytes to write down. */
const keyOf = (bare: Bus): string => createHash('sha256').update(JSON.stringify(bare)).digest('base64');
