/** Which files a command is about: those named, and every `.pair` file in the folders named. */
import { readdirSync, type Stats, statSync } from 'node:fs';
import { relative, resolve, sep } from 'node:path';
import { CommandFailure } from '../cli/failure.js';
import { fileProblem, irregularity, readText } from './node-files.js';

/**
 * Absolute paths, each once, in the order of their names as {@link shownPath} gives them.
 *
 * Folders are searched all the way down, except for `node_modules` and folders whose name begins with a dot. Links to
 * files are followed; links to folders are not, because they can lead round in a circle.
 *
 * All are regular files, or links that lead nowhere.
 *
 * @throws CommandFailure when a path cannot be read or holds no `.pair` file: a check of nothing must not pass.
 */
export function pairFiles(paths: readonly string[], workingFolder: string): string[] {
  const found = new Set<string>();
  for (const path of paths) {
    // The empty path would stand for the working folder, and comes from a variable in a script that was never set.
    if (path === '') throw new CommandFailure('one of the paths is empty');
    const absolute = resolve(workingFolder, path);
    const status = attempt(path, () => statSync(absolute));
    if (status.isDirectory()) {
      if (addFolder(absolute, workingFolder, found) === 0) {
        throw new CommandFailure(`there are no .pair files in ${path}`);
      }
    } else {
      refuseIrregular(path, status);
      found.add(absolute);
    }
  }
  const shown = [...found].map((file) => ({ file, name: shownPath(file, workingFolder) }));
  shown.sort((left, right) => (left.name < right.name ? -1 : left.name > right.name ? 1 : 0));
  return shown.map(({ file }) => file);
}

/** Relative to the working folder, with forward slashes: the same on every system. */
export function shownPath(file: string, workingFolder: string): string {
  // Of the working folder itself, and of folders around it, the last part of the path is not shown.
  if (workingFolder.startsWith(file)) return relativePath(file, workingFolder);
  const nameStart = file.lastIndexOf(sep) + 1;
  const folder = file.slice(0, nameStart);
  // Files by the thousand lie in few folders.
  if (folder !== lastFolder.folder || workingFolder !== lastFolder.workingFolder) {
    lastFolder = { folder, workingFolder, shown: relativePath(folder, workingFolder) };
  }
  return lastFolder.shown === '' ? file.slice(nameStart) : `${lastFolder.shown}/${file.slice(nameStart)}`;
}

let lastFolder = { folder: '', workingFolder: '', shown: '' };

const relativePath = (path: string, workingFolder: string) => relative(workingFolder, path).split(sep).join('/');

/** The text of a file that a command cannot do without. @throws CommandFailure when it cannot be read. */
export function textOrFailure(file: string, workingFolder: string, options: { keepMark?: boolean } = {}): string {
  const result = readText(file, options);
  if ('problem' in result) {
    throw new CommandFailure(`cannot read ${shownPath(file, workingFolder)}: ${result.problem}`);
  }
  return result.text;
}

/** Whether a folder below one that was asked for is looked into, by its name. */
export const isSearched = (folder: string): boolean => folder !== 'node_modules' && !folder.startsWith('.');

/** Adds the `.pair` files in and below a folder and returns how many there are. */
function addFolder(top: string, workingFolder: string, found: Set<string>): number {
  let count = 0;
  const waiting = [top];
  for (let folder = waiting.pop(); folder !== undefined; folder = waiting.pop()) {
    const here = folder;
    const entries = attempt(shownPath(here, workingFolder) || '.', () => readdirSync(here, { withFileTypes: true }));
    const inside = here.endsWith(sep) ? here : here + sep;
    for (const entry of entries) {
      const path = inside + entry.name;
      if (entry.isDirectory()) {
        if (isSearched(entry.name)) waiting.push(path);
      } else if (
        entry.name.endsWith('.pair') &&
        (entry.isFile() || (entry.isSymbolicLink() && leadsToFile(path, workingFolder)))
      ) {
        count++;
        found.add(path);
      }
    }
  }
  return count;
}

/** A link that leads nowhere counts as one to a file: reading it then says what is wrong. */
function leadsToFile(link: string, workingFolder: string): boolean {
  let status: Stats;
  try {
    status = statSync(link);
  } catch {
    return true;
  }
  if (status.isDirectory()) return false;
  refuseIrregular(shownPath(link, workingFolder), status);
  return true;
}

function refuseIrregular(path: string, status: Stats): void {
  const problem = irregularity(status);
  if (problem !== undefined) throw new CommandFailure(`cannot read ${path}: ${problem}`);
}

function attempt<T>(path: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    throw new CommandFailure(`cannot read ${path}: ${fileProblem(error)}`);
  }
}
