/** Makes the packets of many stores, several at a time. */
import { availableParallelism } from 'node:os';
import { setFlagsFromString } from 'node:v8';
import { shareOut } from '../threads/share-out.js';
import { type PacketResult, type PacketSettings, type PacketTask, packetOfTask } from './packet-task.js';

/**
 * Three times what V8 fills before it looks for what is still used. A packet makes some 100 MB of which nearly nothing
 * is left when it is written: with V8's usual 16 MB much of it is copied about before it dies, and a fifth of the time
 * goes into that.
 */
const youngGeneration = 96;

/**
 * @param program what other threads run; without it all is made in this one
 * @param done is told of each result as it comes; what it throws ends everything.
 */
export async function makePackets(
  tasks: readonly PacketTask[],
  settings: PacketSettings,
  { jobs, program }: { readonly jobs: number; readonly program: URL | undefined },
  done: (task: PacketTask, result: PacketResult) => void,
): Promise<void> {
  // For one store another thread would take longer to start than it saves.
  if (tasks.length === 1 || !program) {
    for (const task of tasks) done(task, await packetOfTask(task, settings));
    return;
  }
  // Where our threads have all processors, those that V8 collects garbage with are in their way.
  if (availableParallelism() <= jobs) setFlagsFromString('--no-parallel-scavenge');
  await shareOut('packets', settings, tasks, { jobs, program, youngGeneration }, done);
}
