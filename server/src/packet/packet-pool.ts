/** Makes many packets at a time: each thread takes the next store as soon as it is done with one. */
import { Worker } from 'node:worker_threads';
import { type PacketResult, type PacketSettings, type PacketTask, packetOfTask } from './packet-task.js';

export interface Pool {
  /** How many threads. */
  readonly jobs: number;
  /** What another thread of this program runs. */
  readonly program: URL | undefined;
}

/**
 * In MB, three times what V8 fills before it looks for what is still used. A packet makes some 100 MB of which nearly
 * nothing is left when it is written: with V8's usual 16 MB much of it is copied about before it dies, and a fifth of
 * the time goes into that.
 */
const youngGeneration = 96;

/** @param done is told of each result as it comes; what it throws ends everything. */
export async function makePackets(
  tasks: readonly PacketTask[],
  settings: PacketSettings,
  { jobs, program }: Pool,
  done: (task: PacketTask, result: PacketResult) => void,
): Promise<void> {
  // For one store another thread would take longer to start than it saves.
  if (tasks.length === 1 || !program) {
    for (const task of tasks) done(task, await packetOfTask(task, settings));
    return;
  }
  const waiting = [...tasks];
  const workers = Array.from(
    { length: Math.min(jobs, tasks.length) },
    () => new Worker(program, { workerData: settings, resourceLimits: { maxYoungGenerationSizeMb: youngGeneration } }),
  );
  try {
    await Promise.all(
      workers.map(async (worker) => {
        for (let task = waiting.shift(); task; task = waiting.shift()) done(task, await askWorker(worker, task));
      }),
    );
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
}

function askWorker(worker: Worker, task: PacketTask): Promise<PacketResult> {
  return new Promise((resolve, reject) => {
    const ended = (status: number) => reject(new Error(`a thread ended with ${status}`));
    worker.once('error', reject).once('exit', ended);
    worker.once('message', (result: PacketResult) => {
      worker.off('error', reject).off('exit', ended);
      resolve(result);
    });
    worker.postMessage(task);
  });
}
