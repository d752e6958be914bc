/** Makes many packets at a time: each thread takes the next store as soon as it is done with one. */
import { Worker } from 'node:worker_threads';
import { type PacketResult, type PacketSettings, type PacketTask, packetOfTask } from './packet-task.js';

export interface Pool {
  /** How many threads. One works in this thread, without another. */
  readonly jobs: number;
  /** What another thread of this program runs. */
  readonly program: URL | undefined;
}

/** @param done is told of each result as it comes; what it throws ends everything. */
export async function makePackets(
  tasks: readonly PacketTask[],
  settings: PacketSettings,
  { jobs, program }: Pool,
  done: (task: PacketTask, result: PacketResult) => void,
): Promise<void> {
  if (jobs <= 1 || !program) {
    for (const task of tasks) done(task, await packetOfTask(task, settings));
    return;
  }
  const waiting = [...tasks];
  const workers = Array.from(
    { length: Math.min(jobs, tasks.length) },
    () => new Worker(program, { workerData: settings }),
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
