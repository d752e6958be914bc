/** Takes a file that was asked for into a project. */
import type { Project } from '@fieldpair/language';
import { shownPath } from '../../files/pair-files.js';
import { CommandFailure } from '../failure.js';

/** @throws CommandFailure when the file cannot be read. What it imports and cannot be read is a finding instead. */
export function addFile(project: Project, file: string, workingFolder: string): void {
  project.add(file);
  const problem = project.problemOf(file);
  if (problem !== undefined) throw new CommandFailure(`cannot read ${shownPath(file, workingFolder)}: ${problem}`);
}
