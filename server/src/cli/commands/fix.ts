/** `fieldpair fix`: applies the fixes that need no decision. */
import { writeFileSync } from 'node:fs';
import { applyChanges, Project, safeChanges } from '@fieldpair/language';
import { counted, plainLine } from '@fieldpair/shared';
import type { Command } from 'commander';
import { Option } from 'commander';
import { createTwoFilesPatch } from 'diff';
import { fileProblem, NodeFiles } from '../../files/node-files.js';
import { pairFiles, shownPath } from '../../files/pair-files.js';
import { CommandFailure, exitStatus } from '../failure.js';
import type { Terminal } from '../terminal.js';
import { takeRule } from './check.js';

interface FixOptions {
  readonly format: 'text' | 'json';
  readonly dryRun?: true;
  readonly rule?: readonly string[];
}

/** A fix can free the way for another one; more rounds than this would mean that two undo each other. */
const mostRounds = 10;

export function addFix(program: Command, terminal: Terminal, finish: (status: number) => void): void {
  program
    .command('fix')
    .summary('apply the safe fixes to files and folders')
    .description(
      'Applies the fixes that need no decision to .pair files, and to every .pair file of the folders.\n' +
        'Ends with status 0 when it could be done, whatever is left to decide; fieldpair check tells that.',
    )
    .argument('<path...>', 'files and folders')
    .addOption(new Option('--format <format>', 'how to print').choices(['text', 'json']).default('text'))
    .option('--rule <id...>', 'only fixes of these rules (put the paths first)', takeRule)
    .option('--dry-run', 'change nothing; print the patch')
    .action((paths: string[], options: FixOptions) => finish(fix(paths, options, terminal)));
}

interface FixedFile {
  readonly file: string;
  readonly fixes: number;
  readonly patch: string;
}

function fix(paths: readonly string[], options: FixOptions, terminal: Terminal): number {
  const { workingFolder } = terminal;
  const files = pairFiles(paths, workingFolder);
  const project = new Project(new NodeFiles(), options.rule ? { only: new Set(options.rule) } : {});
  for (const file of files) project.add(file);
  const before = new Map(files.map((file) => [file, textOf(project, file, workingFolder)]));
  const counts = new Map<string, number>();
  for (let round = 0; round < mostRounds && applyRound(project, files, counts); round++);
  const fixed: FixedFile[] = [];
  for (const [file, text] of before) {
    const after = project.textOf(file) ?? text;
    if (after === text) continue;
    const shown = shownPath(file, workingFolder);
    if (!options.dryRun) write(file, after, shown);
    fixed.push({ file: shown, fixes: counts.get(file) ?? 0, patch: createTwoFilesPatch(shown, shown, text, after) });
  }
  terminal.out(options.format === 'json' ? asJson(fixed) : asText(fixed, files.length, options.dryRun === true));
  return exitStatus.nothingFound;
}

/** One round of fixes over all files; whether anything changed. */
function applyRound(project: Project, files: readonly string[], counts: Map<string, number>): boolean {
  let changed = false;
  for (const file of files) {
    const text = project.textOf(file) ?? '';
    const changes = safeChanges(project, file, project.findingsOf(file)).filter((change) => change.file === file);
    const after = applyChanges(text, changes);
    if (after === text) continue;
    project.add(file, after);
    counts.set(file, (counts.get(file) ?? 0) + changes.length);
    changed = true;
  }
  return changed;
}

function textOf(project: Project, file: string, workingFolder: string): string {
  const problem = project.problemOf(file);
  if (problem !== undefined) throw new CommandFailure(`cannot read ${shownPath(file, workingFolder)}: ${problem}`);
  return project.textOf(file) ?? '';
}

function write(file: string, text: string, shown: string): void {
  try {
    writeFileSync(file, text);
  } catch (error) {
    throw new CommandFailure(`cannot write ${shown}: ${fileProblem(error)}`);
  }
}

const asJson = (fixed: readonly FixedFile[]) =>
  `${JSON.stringify({ schema: 'fieldpair-fix-1', files: fixed }, null, 2)}\n`;

function asText(fixed: readonly FixedFile[], looked: number, dryRun: boolean): string {
  if (dryRun) return fixed.map(({ patch }) => patch).join('');
  const lines = fixed.map(({ file, fixes }) => `${plainLine(file)}: ${counted(fixes, 'change')}`);
  return `${[...lines, `${fixed.length} of ${counted(looked, 'file')} changed.`].join('\n')}\n`;
}
