/** `fieldpair check`: all rules on files and folders. */
import { Project } from '@fieldpair/language';
import { counted, ruleById, type Severity, severities } from '@fieldpair/shared';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { NodeFiles } from '../../files/node-files.js';
import { pairFiles } from '../../files/pair-files.js';
import { exitStatus } from '../failure.js';
import { checkGithub } from '../formats/check-github.js';
import { checkJson } from '../formats/check-json.js';
import { checkJunit } from '../formats/check-junit.js';
import { checkSarif } from '../formats/check-sarif.js';
import { checkText } from '../formats/check-text.js';
import type { CheckFormat } from '../formats/format.js';
import { Progress } from '../progress.js';
import { checkReport } from '../report/check-report.js';
import { reaches } from '../report/fail-on.js';
import type { Terminal } from '../terminal.js';
import { version } from '../version.js';
import { addFile } from './add-file.js';

const formats = {
  text: checkText,
  json: checkJson,
  sarif: checkSarif,
  junit: checkJunit,
  github: checkGithub,
} as const satisfies Record<string, CheckFormat>;

interface CheckOptions {
  readonly format: keyof typeof formats;
  readonly failOn: Severity;
  readonly rule?: readonly string[];
}

export function addCheck(program: Command, terminal: Terminal, finish: (status: number) => void): void {
  program
    .command('check')
    .summary('check the wiring in files and folders by all rules')
    .description(
      'Checks the wiring in .pair files, and in every .pair file of the folders, by all rules.\n' +
        'Ends with status 0 when nothing fails, 1 when a finding does, 2 when the check could not be done.',
    )
    .argument('<path...>', 'files and folders')
    .addOption(new Option('--format <format>', 'how to print').choices(Object.keys(formats)).default('text'))
    .addOption(
      new Option('--fail-on <severity>', 'least severity that fails').choices([...severities]).default('error'),
    )
    .option('--rule <id...>', 'only these rules (put the paths first)', takeRule)
    .action((paths: string[], options: CheckOptions) => finish(check(paths, options, terminal)));
}

export function takeRule(id: string, before: readonly string[] | undefined): string[] {
  if (!ruleById(id)) {
    throw new InvalidArgumentError('No rule has this name; fieldpair explain lists them. Paths go before --rule.');
  }
  return [...(before ?? []), id];
}

function check(paths: readonly string[], options: CheckOptions, terminal: Terminal): number {
  const { workingFolder } = terminal;
  const files = pairFiles(paths, workingFolder);
  const project = new Project(new NodeFiles(files), options.rule ? { only: new Set(options.rule) } : {});
  const progress = new Progress(terminal);
  try {
    for (const [index, file] of files.entries()) {
      progress.show(() => `Checking ${index + 1} of ${counted(files.length, 'file')}`);
      addFile(project, file, workingFolder);
      project.digest(file);
    }
    const report = checkReport(project.check(), files, (file) => project.textOf(file), workingFolder);
    progress.end();
    terminal.out(formats[options.format](report, { colour: terminal.colour, failOn: options.failOn, version }));
    const fails = report.findings.some(({ finding }) => reaches(finding.severity, options.failOn));
    return fails ? exitStatus.found : exitStatus.nothingFound;
  } finally {
    progress.end();
  }
}
