/** Checks again whenever a file changes that the last check was about. */
import { basename, resolve } from 'node:path';
import { Project } from '@fieldpair/language';
import { counted } from '@fieldpair/shared';
import { watch } from 'chokidar';
import { NodeFiles } from '../../files/node-files.js';
import { isSearched, pairFiles, shownPath } from '../../files/pair-files.js';
import { CommandFailure } from '../failure.js';
import type { Terminal } from '../terminal.js';

/** An editor that saves all its files, or git that changes branches, is waited for. */
const pauseMs = 100;

export interface Watched {
  readonly project: Project;
  /** The files that were asked for. */
  readonly files: readonly string[];
}

/**
 * Reports once at first and again after changes, until the terminal is left.
 *
 * @throws CommandFailure when there is nothing to check at first. What goes wrong later is told and can be mended.
 */
export async function watchFiles(
  paths: readonly string[],
  only: ReadonlySet<string> | undefined,
  terminal: Terminal,
  report: (watched: Watched) => void,
): Promise<void> {
  const { workingFolder } = terminal;
  const project = new Project(new NodeFiles(), only ? { only } : {});
  const changed = new Set<string>();
  let files: readonly string[] = [];
  const check = () => {
    const now = pairFiles(paths, workingFolder);
    const [before, after] = [new Set(files), new Set(now)];
    // Of an import that is not checked itself, forgetting means reading anew.
    for (const file of [...changed, ...before]) if (!after.has(file)) project.remove(file);
    for (const file of now) if (!before.has(file) || changed.has(file)) project.add(file);
    files = now;
    for (const file of now) {
      const problem = project.problemOf(file);
      if (problem !== undefined) throw new CommandFailure(`cannot read ${shownPath(file, workingFolder)}: ${problem}`);
    }
    changed.clear();
    report({ project, files });
  };
  check();

  const followed = new Set([...paths.map((path) => resolve(workingFolder, path)), ...project.filesBehind(files)]);
  const watcher = watch([...followed], {
    ignoreInitial: true,
    ignored: (path, status) =>
      !followed.has(path) && (status?.isFile() ? !path.endsWith('.pair') : !isSearched(basename(path))),
  });
  const again = () => {
    const [file = ''] = changed;
    const what = changed.size === 1 ? shownPath(file, workingFolder) : counted(changed.size, 'file');
    terminal.out(`\n${new Date().toLocaleTimeString()}  ${what} changed\n\n`);
    try {
      check();
      for (const one of project.filesBehind(files)) {
        if (followed.has(one)) continue;
        followed.add(one);
        watcher.add(one);
      }
    } catch (error) {
      if (!(error instanceof CommandFailure)) throw error;
      terminal.error(`fieldpair: ${error.message}\n`);
    }
  };
  let waiting: NodeJS.Timeout | undefined;
  watcher.on('all', (event, path) => {
    if (event === 'addDir') return;
    changed.add(resolve(workingFolder, path));
    clearTimeout(waiting);
    waiting = setTimeout(again, pauseMs);
  });
  await new Promise((left) => terminal.left?.addEventListener('abort', left));
  clearTimeout(waiting);
  await watcher.close();
}
