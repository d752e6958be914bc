/** Some groups of files, checked in another thread. */
import { CommandFailure } from '../failure.js';
import { checkGroups, type FileGroup, type GroupCheck, type GroupSettings } from './check-groups.js';
import { type PlainPart, plainPart } from './plain-part.js';

export type PlainGroupCheck = Omit<GroupCheck, 'part'> & { readonly part: PlainPart };

/** For each group its answer; or the line for the user when a file cannot be read. */
export type CheckTaskResult = { readonly checks: readonly PlainGroupCheck[] } | { readonly problem: string };

export function checkTask(groups: readonly FileGroup[], settings: GroupSettings): CheckTaskResult {
  try {
    return { checks: checkGroups(groups, settings).map(({ part, read }) => ({ part: plainPart(part), read })) };
  } catch (error) {
    if (error instanceof CommandFailure) return { problem: error.message };
    throw error;
  }
}
