/** Checks files in groups that can be checked apart, so that each group has an answer of its own. */
import { type PartCheck, Project } from '@fieldpair/language';
import { NodeFiles } from '../../files/node-files.js';
import { addFile } from '../commands/add-file.js';

export type FileGroup = readonly string[];

/** The answer for one group, and all files that it was computed from, those that are missing too. */
export interface GroupCheck {
  readonly part: PartCheck;
  readonly read: readonly string[];
}

export interface GroupSettings {
  /** Only these rules, when given. */
  readonly only?: readonly string[] | undefined;
  readonly workingFolder: string;
}

/**
 * @param tell is told how many files are done
 * @throws CommandFailure when a file cannot be read.
 */
export function checkGroups(
  groups: readonly FileGroup[],
  settings: GroupSettings,
  tell: (done: number) => void = () => undefined,
): GroupCheck[] {
  const { project } = digestFiles(groups.flat(), settings, tell);
  return groups.map((group) => ({ part: project.checkPart(group), read: project.filesBehind(group) }));
}

/**
 * A project that takes in one file after the other, each judged at once.
 *
 * @param isEnough is asked before each file whether to leave the ones that are left, so many, to others
 * @returns the project, and how many files are done
 * @throws CommandFailure when a file cannot be read.
 */
export function digestFiles(
  files: readonly string[],
  { only, workingFolder }: GroupSettings,
  tell: (done: number) => void,
  isEnough: (left: number) => boolean = () => false,
): { readonly project: Project; readonly done: number } {
  const project = new Project(new NodeFiles(files), only ? { only: new Set(only) } : {});
  for (const [index, file] of files.entries()) {
    if (isEnough(files.length - index)) return { project, done: index };
    tell(index);
    addFile(project, file, workingFolder);
    project.digest(file);
  }
  return { project, done: files.length };
}
