/** A check from paths to what it found: which files, in which groups, by which threads, and what is known already. */
import { fileGroups, type PartCheck, type ProjectCheck, wholeCheck } from '@fieldpair/language';
import { counted } from '@fieldpair/shared';
import { NodeFiles } from '../../files/node-files.js';
import { pairFiles } from '../../files/pair-files.js';
import { Progress } from '../progress.js';
import type { Terminal } from '../terminal.js';
import { version } from '../version.js';
import { checkGroups, type FileGroup, type GroupCheck } from './check-groups.js';
import { checkWhole } from './check-whole.js';
import { type Shard, shareOf } from './shard.js';

export interface CheckPlan {
  /** Only these rules, when given. */
  readonly only?: readonly string[] | undefined;
  readonly shard?: Shard | undefined;
  readonly cache?: boolean | undefined;
  readonly jobs?: number | undefined;
}

/** @throws CommandFailure when a path or a file cannot be read. */
export async function runCheck(
  paths: readonly string[],
  plan: CheckPlan,
  terminal: Terminal,
): Promise<{ readonly files: readonly string[]; readonly result: ProjectCheck }> {
  const files = pairFiles(paths, terminal.workingFolder);
  const settings = plan.only ? { only: new Set(plan.only) } : {};
  // Who neither shares nor keeps anything need not know what belongs together.
  if (!plan.shard && !plan.cache && !plan.jobs)
    return { files, result: wholeCheck(await all(files, plan, terminal), settings) };
  const groups = fileGroups(files, new NodeFiles(files));
  const mine = plan.shard ? shareOf(groups, plan.shard) : groups;
  const parts = plan.cache ? await keptAndNew(mine, plan, terminal) : await partsOf(mine, plan, terminal);
  // Whether an entry of a catalogue is used is known only from all shares together.
  const known = plan.shard ? parts.map((part) => ({ ...part, declared: [] })) : parts;
  return { files: mine.flat(), result: wholeCheck(known, settings) };
}

const all = (files: readonly string[], { only }: CheckPlan, terminal: Terminal): Promise<PartCheck[]> =>
  withProgress(files.length, terminal, (tell) =>
    checkWhole(files, { only, workingFolder: terminal.workingFolder }, terminal.program, tell),
  );

/** Checks the groups that have changed since they were last checked; of the others the answer is known. */
async function keptAndNew(groups: readonly FileGroup[], plan: CheckPlan, terminal: Terminal): Promise<PartCheck[]> {
  // No other check has to tell texts apart.
  const { CheckCache, fingerprint } = await import('./check-cache.js');
  const of = [version, terminal.program && fingerprint(terminal.program), ...(plan.only?.toSorted() ?? ['all'])];
  const cache = new CheckCache(terminal.workingFolder, of.join(' '));
  const known = groups.map((group) => cache.find(group));
  const changed = groups.filter((_, index) => !known[index]);
  const fresh = await checksOf(changed, plan, terminal);
  for (const [index, check] of fresh.entries()) cache.keep(changed[index]!, check);
  const problem = cache.save();
  if (problem !== undefined) terminal.error(`fieldpair: the answers were not kept for the next check: ${problem}\n`);
  return [...known.filter((part) => part !== undefined), ...fresh.map(({ part }) => part)];
}

const partsOf = async (...what: Parameters<typeof checksOf>) => (await checksOf(...what)).map(({ part }) => part);

/** In this thread, or in several where that was asked for. */
async function checksOf(
  groups: readonly FileGroup[],
  { only, jobs = 1 }: CheckPlan,
  terminal: Terminal,
): Promise<GroupCheck[]> {
  const { workingFolder, program } = terminal;
  const total = groups.reduce((sum, group) => sum + group.length, 0);
  const settings = { only, workingFolder };
  return withProgress(total, terminal, async (tell) => {
    if (jobs === 1 || !program || groups.length < 2) return checkGroups(groups, settings, tell);
    // Most checks have no other threads.
    const { checkInThreads } = await import('./check-in-threads.js');
    return checkInThreads(groups, settings, { jobs, program }, tell);
  });
}

/** Shows how many of the files are done. */
async function withProgress<T>(
  total: number,
  terminal: Terminal,
  work: (tell: (done: number) => void) => Promise<T>,
): Promise<T> {
  const progress = new Progress(terminal);
  try {
    return await work((done) => progress.show(() => `Checked ${done} of ${counted(total, 'file')}`));
  } finally {
    progress.end();
  }
}
