/** Work that other threads share: each takes the next task as soon as it is done with one. */
import { Worker } from 'node:worker_threads';
import type { ResultOf, SettingsOf, TaskOf, ThreadReply, ThreadStart, ThreadWork } from './thread-work.js';

export interface Threads {
  /** How many. */
  readonly jobs: number;
  /** The program that they run. */
  readonly program: URL;
  /** In MB, how much of what V8 has just made it holds before it looks for what is still used; 16 where unsaid. */
  readonly youngGeneration?: number;
}

/** @param done is told of each result as it comes; what it throws, or a task, ends everything. */
export async function shareOut<Work extends keyof ThreadWork>(
  work: Work,
  settings: SettingsOf<Work>,
  tasks: readonly TaskOf<Work>[],
  { jobs, program, youngGeneration }: Threads,
  done: (task: TaskOf<Work>, result: ResultOf<Work>) => void,
): Promise<void> {
  const waiting = [...tasks];
  const workerData: ThreadStart = { work, settings };
  const limits = youngGeneration === undefined ? {} : { resourceLimits: { maxYoungGenerationSizeMb: youngGeneration } };
  const workers = Array.from(
    { length: Math.min(jobs, tasks.length) },
    () => new Worker(program, { workerData, ...limits }),
  );
  try {
    await Promise.all(
      workers.map(async (worker) => {
        for (let task = waiting.shift(); task; task = waiting.shift()) {
          done(task, (await resultOf(worker, task)) as ResultOf<Work>);
        }
      }),
    );
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
}

function resultOf(worker: Worker, task: unknown): Promise<unknown> {
  return new Promise((resolve, reject) => {
    const ended = (status: number) => reject(new Error(`a thread ended with ${status}`));
    worker.once('error', reject).once('exit', ended);
    worker.once('message', (reply: ThreadReply) => {
      worker.off('error', reject).off('exit', ended);
      if ('failure' in reply) reject(new Error(reply.failure));
      else resolve(reply.result);
    });
    worker.postMessage(task);
  });
}
