/** The other side of {@link shareOut}: a task comes in, its result goes out. */
import { parentPort, workerData } from 'node:worker_threads';
import { type ThreadReply, type ThreadStart, threadWork } from './thread-work.js';

export async function serveThread(): Promise<void> {
  const { work, settings } = workerData as ThreadStart;
  const answer = (await threadWork[work]()) as (task: unknown, settings: unknown) => unknown;
  const reply = (message: ThreadReply) => parentPort?.postMessage(message);
  parentPort?.on('message', async (task: unknown) => {
    try {
      reply({ result: await answer(task, settings) });
    } catch (error) {
      reply({ failure: error instanceof Error ? error.message : String(error) });
    }
  });
}
