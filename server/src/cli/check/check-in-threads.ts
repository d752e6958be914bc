/** Checks groups of files in several threads. */
import { shareOut, type Threads } from '../../threads/share-out.js';
import { CommandFailure } from '../failure.js';
import type { FileGroup, GroupCheck, GroupSettings } from './check-groups.js';
import type { CheckTaskResult } from './check-task.js';
import { partOfPlain } from './plain-part.js';

/** So many tasks a thread: enough that all end at about the same time, few enough that imports are not read too often. */
const tasksPerThread = 4;

/**
 * The same as of `checkGroups`, in the order of the groups.
 *
 * @param tell is told how many files are done
 * @throws CommandFailure when a file cannot be read.
 */
export async function checkInThreads(
  groups: readonly FileGroup[],
  settings: GroupSettings,
  threads: Threads,
  tell: (done: number) => void,
): Promise<GroupCheck[]> {
  const size = Math.ceil(groups.length / (threads.jobs * tasksPerThread));
  const tasks = Array.from({ length: Math.ceil(groups.length / size) }, (_, index) =>
    groups.slice(index * size, (index + 1) * size),
  );
  const results = new Map<readonly FileGroup[], CheckTaskResult>();
  let files = 0;
  await shareOut('check', settings, tasks, threads, (task, result) => {
    results.set(task, result);
    files += task.flat().length;
    tell(files);
  });
  return tasks.flatMap((task) => {
    const result = results.get(task)!;
    // Of several files that cannot be read, the first is told, as without threads.
    if ('problem' in result) throw new CommandFailure(result.problem);
    return result.checks.map(({ part, read }) => ({ part: partOfPlain(part), read }));
  });
}
