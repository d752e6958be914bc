/** `fieldpair check`: all rules on files and folders. */
import { counted, ruleById, type Severity, severities } from '@fieldpair/shared';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { NodeFiles } from '../../files/node-files.js';
import { runCheck } from '../check/run-check.js';
import { type Shard, takeShard } from '../check/shard.js';
import { CommandFailure, exitStatus } from '../failure.js';
import { checkGithub } from '../formats/check-github.js';
import { checkJson } from '../formats/check-json.js';
import { checkJunit } from '../formats/check-junit.js';
import { checkSarif } from '../formats/check-sarif.js';
import { checkText } from '../formats/check-text.js';
import type { CheckFormat } from '../formats/format.js';
import { type CheckReport, checkReport } from '../report/check-report.js';
import { reaches } from '../report/fail-on.js';
import type { Terminal } from '../terminal.js';
import { version } from '../version.js';
import { takeJobs } from './take-jobs.js';

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
  readonly shard?: Shard;
  readonly cache?: boolean;
  readonly jobs?: number;
  readonly watch?: boolean;
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
    .option('--shard <share>', 'check one share, such as 2/5, and leave the others to other machines', takeShard)
    .option('--cache', 'keep answers in .fieldpair/, and check only what has changed since')
    .option(
      '--jobs <number>',
      'how many threads check; left out, one, and after a second as many as there are processors',
      takeJobs,
    )
    .addOption(
      new Option('--watch', 'check again after every change, until Ctrl+C').conflicts(['shard', 'cache', 'jobs']),
    )
    .action(async (paths: string[], options: CheckOptions) => {
      if (options.watch) await watchAndCheck(paths, options, terminal);
      else finish(await check(paths, options, terminal));
    });
}

export function takeRule(id: string, before: readonly string[] | undefined): string[] {
  if (!ruleById(id)) {
    throw new InvalidArgumentError('No rule has this name; fieldpair explain lists them. Paths go before --rule.');
  }
  return [...(before ?? []), id];
}

async function check(paths: readonly string[], options: CheckOptions, terminal: Terminal): Promise<number> {
  const { rule: only, shard, cache, jobs } = options;
  const { files, result } = await runCheck(paths, { only, shard, cache, jobs }, terminal);
  const host = new NodeFiles();
  const textOf = (file: string) => {
    const read = host.read(file);
    return 'text' in read ? read.text : undefined;
  };
  const report = checkReport(result, files, textOf, terminal.workingFolder);
  print(report, options, terminal);
  const fails = report.findings.some(({ finding }) => reaches(finding.severity, options.failOn));
  return fails ? exitStatus.found : exitStatus.nothingFound;
}

function print(report: CheckReport, { format, failOn }: CheckOptions, terminal: Terminal): void {
  let text: string;
  try {
    text = formats[format](report, { colour: terminal.colour, failOn, version });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    // Node has no text of more than half a gigabyte.
    const count = counted(report.findings.length, 'finding');
    throw new CommandFailure(`${count} are too many to print at once; check fewer files, or one rule with --rule`);
  }
  terminal.out(text);
}

async function watchAndCheck(paths: readonly string[], options: CheckOptions, terminal: Terminal): Promise<void> {
  if (options.format !== 'text') throw new CommandFailure('--watch prints text only; leave --format out');
  // No other check needs what watches files.
  const { watchFiles } = await import('../check/watch.js');
  const only = options.rule && new Set(options.rule);
  await watchFiles(paths, only, terminal, ({ project, files }) => {
    const textOf = (file: string) => project.textOf(file);
    print(checkReport(project.check(), files, textOf, terminal.workingFolder), options, terminal);
  });
}
