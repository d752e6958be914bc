/** A check of all files: by this thread, and by others too where it takes long, as the simulation of faulty buses does. */
import { availableParallelism } from 'node:os';
import { fileGroups, type PartCheck } from '@fieldpair/language';
import { NodeFiles } from '../../files/node-files.js';
import { digestFiles, type GroupSettings } from './check-groups.js';

export interface Help {
  /** How many threads come to help. */
  readonly jobs: number;
  /** Whether to leave the files that are left, so many, to them. */
  isWanted(left: number): boolean;
}

/** Milliseconds that this thread goes on alone: thousands of sound stores are done by then. */
const patience = 1000;
/** With fewer files left, others would come too late. */
const worthwhile = 20;

function usualHelp(): Help {
  const jobs = availableParallelism();
  const late = performance.now() + patience;
  return { jobs, isWanted: (left) => 1 < jobs && worthwhile <= left && late < performance.now() };
}

/**
 * @param program what other threads run; without it this one does all
 * @param tell is told how many files are done
 * @throws CommandFailure when a file cannot be read.
 */
export async function checkWhole(
  files: readonly string[],
  settings: GroupSettings,
  program: URL | undefined,
  tell: (done: number) => void,
  help: Help = usualHelp(),
): Promise<PartCheck[]> {
  const isEnough = (left: number) => program !== undefined && help.isWanted(left);
  const { project, done } = digestFiles(files, settings, tell, isEnough);
  if (done === files.length || !program) return [project.checkPart(files)];
  const finished = new Set(files.slice(0, done));
  const groups = fileGroups(files, new NodeFiles(files));
  const isFinished = (group: readonly string[]) => group.every((file) => finished.has(file));
  const mine = groups.filter(isFinished).flat();
  const { checkInThreads } = await import('./check-in-threads.js');
  const others = await checkInThreads(
    groups.filter((group) => !isFinished(group)),
    settings,
    { jobs: help.jobs, program },
    (count) => tell(mine.length + count),
  );
  return [project.checkPart(mine), ...others.map(({ part }) => part)];
}
