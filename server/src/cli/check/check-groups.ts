/** Checks files in groups that can be checked apart, so that each group has an answer of its own. */
import { type PartCheck, Project } from '@fieldpair/language';
import { counted } from '@fieldpair/shared';
import { NodeFiles } from '../../files/node-files.js';
import { addFile } from '../commands/add-file.js';
import { Progress } from '../progress.js';
import type { Terminal } from '../terminal.js';

/** The answer for one group, and all files that it was computed from, those that are missing too. */
export interface GroupCheck {
  readonly part: PartCheck;
  readonly read: readonly string[];
}

/** @throws CommandFailure when a file cannot be read. */
export function checkGroups(
  groups: readonly (readonly string[])[],
  only: ReadonlySet<string> | undefined,
  terminal: Terminal,
): GroupCheck[] {
  const files = groups.flat();
  const project = new Project(new NodeFiles(files), only ? { only } : {});
  const progress = new Progress(terminal);
  try {
    for (const [index, file] of files.entries()) {
      progress.show(() => `Checking ${index + 1} of ${counted(files.length, 'file')}`);
      addFile(project, file, terminal.workingFolder);
      project.digest(file);
    }
  } finally {
    progress.end();
  }
  return groups.map((group) => ({ part: project.checkPart(group), read: project.filesBehind(group) }));
}
