/** `fieldpair format`: lays out the text of files, or says which are not laid out. */
import { writeFileSync } from 'node:fs';
import { formatText } from '@fieldpair/language';
import { counted, plainLine } from '@fieldpair/shared';
import type { Command } from 'commander';
import { fileProblem } from '../../files/node-files.js';
import { pairFiles, shownPath, textOrFailure } from '../../files/pair-files.js';
import { CommandFailure, exitStatus } from '../failure.js';
import type { Terminal } from '../terminal.js';

interface FormatOptions {
  readonly check?: true;
}

export function addFormat(program: Command, terminal: Terminal, finish: (status: number) => void): void {
  program
    .command('format')
    .summary('lay out the text of files and folders')
    .description('Lays out the text of .pair files, and of every .pair file of the folders. Only layout changes.')
    .argument('<path...>', 'files and folders')
    .option('--check', 'change nothing; list the files that would change and end with status 1 when there are any')
    .action((paths: string[], options: FormatOptions) => finish(format(paths, options, terminal)));
}

function format(paths: readonly string[], { check }: FormatOptions, terminal: Terminal): number {
  const { workingFolder } = terminal;
  const files = pairFiles(paths, workingFolder);
  let changed = 0;
  for (const file of files) {
    const text = textOrFailure(file, workingFolder, { keepMark: true });
    const formatted = formatText(text);
    if (formatted === text) continue;
    const shown = shownPath(file, workingFolder);
    if (!check) write(file, formatted, shown);
    terminal.out(`${plainLine(shown)}\n`);
    changed++;
  }
  const looked = counted(files.length, 'file');
  terminal.out(check ? `${changed} of ${looked} would change.\n` : `${changed} of ${looked} changed.\n`);
  return check && changed > 0 ? exitStatus.found : exitStatus.nothingFound;
}

function write(file: string, text: string, shown: string): void {
  try {
    writeFileSync(file, text);
  } catch (error) {
    throw new CommandFailure(`cannot write ${shown}: ${fileProblem(error)}`);
  }
}
