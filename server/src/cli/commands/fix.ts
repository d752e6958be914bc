/** `fieldpair fix`: applies the fixes that need no decision. */
import { writeFileSync } from 'node:fs';
import { applyChanges, Project, safeFixes } from '@fieldpair/language';
import type { Command } from 'commander';
import { Option } from 'commander';
import { fileProblem, NodeFiles, readText } from '../../files/node-files.js';
import { pairFiles, shownPath } from '../../files/pair-files.js';
import { CommandFailure, exitStatus } from '../failure.js';
import { fixJson } from '../formats/fix-json.js';
import { fixText } from '../formats/fix-text.js';
import { type AppliedFix, type FixReport, leftFindings } from '../report/fix-report.js';
import { LineTable } from '../report/line-table.js';
import type { Terminal } from '../terminal.js';
import { addFile } from './add-file.js';
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

function fix(paths: readonly string[], options: FixOptions, terminal: Terminal): number {
  const { workingFolder } = terminal;
  const files = pairFiles(paths, workingFolder);
  const project = new Project(new NodeFiles(files), options.rule ? { only: new Set(options.rule) } : {});
  for (const file of files) addFile(project, file, workingFolder);
  const textOf = (file: string) => project.textOf(file) ?? '';
  const before = new Map(files.map((file) => [file, textOf(file)]));
  const applied: AppliedFix[] = [];
  for (let round = 0; round < mostRounds; round++) {
    const made = applyRound(project, before, workingFolder);
    if (made.length === 0) break;
    applied.push(...made);
  }
  const changed: { file: string; before: string; after: string }[] = [];
  for (const [file, text] of before) {
    const after = textOf(file);
    if (after === text) continue;
    const shown = shownPath(file, workingFolder);
    if (!options.dryRun) write(file, after, shown);
    changed.push({ file: shown, before: text, after });
  }
  const report: FixReport = {
    dryRun: options.dryRun === true,
    looked: files.length,
    changed,
    applied,
    left: leftFindings(project.check().findings, textOf, workingFolder),
  };
  terminal.out(options.format === 'json' ? fixJson(report) : fixText(report));
  return exitStatus.nothingFound;
}

/** One round of fixes over all files, of which none changes a file that was not asked for. */
function applyRound(project: Project, asked: ReadonlyMap<string, string>, workingFolder: string): AppliedFix[] {
  const applied: AppliedFix[] = [];
  for (const file of asked.keys()) {
    const fixes = safeFixes(project, file, project.findingsOf(file));
    const own = fixes.filter(({ changes }) => changes.every((change) => asked.has(change.file)));
    const changes = own.flatMap((one) => one.changes);
    const texts = new Map(
      [...new Set(changes.map((change) => change.file))].map((one) => [one, project.textOf(one) ?? '']),
    );
    const table = new LineTable(texts.get(file) ?? '');
    for (const {
      finding,
      fix: { title },
    } of own) {
      const { line } = table.position(finding.place.start);
      applied.push({ file: shownPath(file, workingFolder), line, rule: finding.rule, title });
    }
    for (const [one, text] of texts) {
      const ofFile = changes.filter((change) => change.file === one);
      project.add(one, applyChanges(text, ofFile));
    }
  }
  return applied;
}

function write(file: string, text: string, shown: string): void {
  try {
    // Reading takes a byte order mark off.
    const read = readText(file, { keepMark: true });
    const mark = 'text' in read && read.text?.startsWith('\uFEFF') ? '\uFEFF' : '';
    writeFileSync(file, mark + text);
  } catch (error) {
    throw new CommandFailure(`cannot write ${shown}: ${fileProblem(error)}`);
  }
}
