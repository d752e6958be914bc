/** The thread that makes packets for another one: a task comes in, its result goes out. */
import { parentPort, workerData } from 'node:worker_threads';
import { type PacketResult, type PacketSettings, type PacketTask, packetOfTask } from './packet-task.js';

export function servePacketTasks(): void {
  const settings = workerData as PacketSettings;
  parentPort?.on('message', (task: PacketTask) => {
    const answer = (result: PacketResult) => parentPort?.postMessage(result);
    packetOfTask(task, settings).then(answer, (error: unknown) => {
      answer({ problem: error instanceof Error ? error.message : String(error) });
    });
  });
}
