/**
 * Has waves simulated in a thread of its own, one task at a time.
 *
 * Whoever asks does so under a name, such as one for the view and one for rules. Of the tasks of one name only the
 * newest counts: it takes the place of one that waits and stops one that runs. To stop is to end the thread, because a
 * simulation does not listen while it computes; the next task starts another.
 */
import { Worker } from 'node:worker_threads';
import type { Bus, Known, Signal, WaveAdvice } from '@fieldpair/shared';
import type { AdviceJob, WaveAnswers, WaveJob, WaveReply, WaveRequest } from './wave-job.js';

/** What the thread gives when it does not fail. */
type Answer = Exclude<WaveReply, { readonly failure: string }>;

/** What a cancellation looks like from here; the protocol's tokens do. */
export interface Cancellation {
  readonly isCancellationRequested: boolean;
  onCancellationRequested(listener: () => void): { dispose(): void };
}

interface Task {
  readonly name: string;
  readonly request: WaveRequest;
  /** Undefined when the task was stopped. */
  readonly end: (answer: Answer | undefined) => void;
  readonly fail: (error: Error) => void;
}

export class WaveRunner {
  readonly #workerFile: string;
  #waiting: readonly Task[] = [];
  #running: Task | undefined;
  #worker: Worker | undefined;

  /** @param workerFile the bundle of wave-worker.ts */
  constructor(workerFile: string) {
    this.#workerFile = workerFile;
  }

  /**
   * @param name of the tasks among which only the newest counts
   * @returns the answers; undefined when a newer task or the cancellation stopped this one. It rejects when the
   * simulation itself fails.
   */
  async ask(name: string, jobs: readonly WaveJob[], cancellation?: Cancellation): Promise<WaveAnswers | undefined> {
    const answer = await this.#answer(name, { jobs }, cancellation);
    return answer && 'answers' in answer ? answer.answers : undefined;
  }

  /** The signal of a bus that {@link ask} would be asked about; the same for the rest. */
  async askSignal(name: string, bus: Bus): Promise<Known<Signal> | undefined> {
    const answer = await this.#answer(name, { signalOf: bus });
    return answer && 'signal' in answer ? answer.signal : undefined;
  }

  /** Advice on a bus that {@link ask} would be asked about; the same for the rest. */
  async askAdvice(name: string, job: AdviceJob, cancellation?: Cancellation): Promise<Known<WaveAdvice> | undefined> {
    const answer = await this.#answer(name, { adviseOn: job }, cancellation);
    return answer && 'advice' in answer ? answer.advice : undefined;
  }

  /** Stops the task of a name, if there is one. */
  stop(name: string): void {
    this.#stop((task) => task.name === name);
  }

  async #answer(name: string, request: WaveRequest, cancellation?: Cancellation): Promise<Answer | undefined> {
    if (cancellation?.isCancellationRequested) return undefined;
    let listening: { dispose(): void } | undefined;
    try {
      return await new Promise<Answer | undefined>((end, fail) => {
        const task = { name, request, end, fail };
        listening = cancellation?.onCancellationRequested(() => this.#stop((one) => one === task));
        this.#stop((one) => one.name === name);
        this.#waiting = [...this.#waiting, task];
        this.#next();
      });
    } finally {
      listening?.dispose();
    }
  }

  dispose(): void {
    this.#stop(() => true);
    this.#endThread();
  }

  #stop(concerned: (task: Task) => boolean): void {
    const stopped = this.#waiting.filter(concerned);
    this.#waiting = this.#waiting.filter((task) => !concerned(task));
    if (this.#running && concerned(this.#running)) {
      stopped.push(this.#running);
      this.#running = undefined;
      this.#endThread();
    }
    for (const task of stopped) task.end(undefined);
    this.#next();
  }

  #next(): void {
    const [task, ...later] = this.#waiting;
    if (this.#running || !task) return;
    this.#waiting = later;
    this.#running = task;
    try {
      this.#worker ??= this.#thread();
      this.#worker.postMessage(task.request);
    } catch (error) {
      this.#settle({ failure: error instanceof Error ? error.message : String(error) });
    }
  }

  #thread(): Worker {
    const worker = new Worker(this.#workerFile);
    worker.unref();
    worker.on('message', (reply: WaveReply) => {
      if (worker === this.#worker) this.#settle(reply);
    });
    worker.on('error', (error) => {
      if (worker !== this.#worker) return;
      this.#worker = undefined;
      this.#settle({ failure: error instanceof Error ? error.message : String(error) });
    });
    return worker;
  }

  #settle(reply: WaveReply): void {
    const task = this.#running;
    this.#running = undefined;
    if ('failure' in reply) task?.fail(new Error(`The simulation failed: ${reply.failure}`));
    else task?.end(reply);
    this.#next();
  }

  #endThread(): void {
    const worker = this.#worker;
    this.#worker = undefined;
    void worker?.terminate();
  }
}
