/** `fieldpair packet`: the documents that an installer holds in hand, one folder a store. */
import { availableParallelism } from 'node:os';
import { basename, join, resolve } from 'node:path';
import { Project } from '@fieldpair/language';
import { counted, type LengthUnit, plainLine } from '@fieldpair/shared';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { NodeFiles } from '../../files/node-files.js';
import { pairFiles } from '../../files/pair-files.js';
import { safeName, uniqueNames } from '../../files/safe-name.js';
import type { PacketResult, PacketSettings, PacketTask } from '../../packet/packet-task.js';
import { CommandFailure, exitStatus } from '../failure.js';
import { Progress } from '../progress.js';
import type { Terminal } from '../terminal.js';
import { addFile } from './add-file.js';
import { takeJobs } from './take-jobs.js';

const formats = ['html', 'pdf', 'csv', 'xlsx', 'svg'] as const;
type Format = (typeof formats)[number];
type PacketMade = Exclude<PacketResult, { problem: string }>;

interface PacketCommandOptions {
  readonly out: string;
  readonly format: readonly Format[];
  readonly paper: 'letter' | 'a4';
  readonly unit?: LengthUnit | 'both';
  readonly date?: string;
  readonly revision?: string;
  readonly slack?: string;
  readonly reel?: string;
  readonly font?: string;
  readonly jobs?: number;
}

export function addPacket(program: Command, terminal: Terminal, finish: (status: number) => void): void {
  program
    .command('packet')
    .summary("write the installer's packet of each store")
    .description(
      "Writes the installer's packet of each store: landing schedule, address table, pull list, parts list and\n" +
        'commissioning sheet, one folder a store.',
    )
    .argument('<path...>', 'files and folders')
    .requiredOption('--out <folder>', 'where the folders of the stores go')
    .option('--format <formats>', `any of ${formats.join(', ')}, parted by commas`, takeFormats, formats)
    .addOption(new Option('--paper <size>', 'the paper').choices(['letter', 'a4']).default('letter'))
    .addOption(new Option('--unit <unit>', 'of lengths; as written when left out').choices(['ft', 'm', 'both']))
    .option('--date <date>', 'of issue, as YYYY-MM-DD; today when left out', takeDate)
    .option('--revision <text>', 'of the plan; what git says when left out')
    .option('--slack <rule>', 'what is cut beyond the planned length: "5 % + 3 ft" is a share and a length at each end')
    .option('--reel <length>', 'how much cable is on a reel: "1000 ft"')
    .option('--font <file>', 'a TrueType or OpenType font with the letters that the typeface of PDFs lacks')
    .option('--jobs <number>', 'how many stores at a time; as many as there are processors when left out', takeJobs)
    .action(async (paths: string[], options: PacketCommandOptions) => finish(await packet(paths, options, terminal)));
}

async function packet(paths: readonly string[], options: PacketCommandOptions, terminal: Terminal): Promise<number> {
  const { workingFolder } = terminal;
  // The other commands start without the documents.
  const [{ storesWithFiles }, { makePackets }] = await Promise.all([
    import('../../packet/packet-task.js'),
    import('../../packet/make-packets.js'),
  ]);
  const settings = await settingsOf(options, workingFolder);
  const files = pairFiles(paths, workingFolder);
  const project = new Project(new NodeFiles());
  for (const file of files) addFile(project, file, workingFolder);
  const out = resolve(workingFolder, options.out);
  const unique = uniqueNames();
  const tasks = [...storesWithFiles(project, files)].map(
    ([store, its]): PacketTask => ({
      files: its,
      store: store.name,
      folder: join(out, unique(safeName(store.name, 'store'))),
    }),
  );
  if (tasks.length === 0) throw new CommandFailure('there is no store in these files');

  const jobs = Math.min(options.jobs ?? availableParallelism(), tasks.length);
  const progress = new Progress(terminal);
  const results = new Map<PacketTask, PacketMade>();
  try {
    await makePackets(tasks, settings, { jobs, program: terminal.program }, (task, result) => {
      if ('problem' in result) {
        throw new CommandFailure(`cannot write the packet of ${task.store}: ${result.problem}`);
      }
      results.set(task, result);
      progress.show(() => `Packet ${results.size} of ${tasks.length}`);
    });
  } finally {
    progress.end();
  }
  terminal.out(
    summaryText(
      tasks.map((task) => ({ folder: join(options.out, basename(task.folder)), ...results.get(task)! })),
      options.format,
    ),
  );
  return exitStatus.nothingFound;
}

function summaryText(packets: readonly ({ folder: string } & PacketMade)[], wanted: readonly Format[]): string {
  const lines = packets.flatMap(({ folder, sheets, files, errors, kept, lacking }) => {
    const open = errors === 0 ? '' : `; its plan has ${counted(errors, 'open error')}`;
    return [
      `${plainLine(folder)}: ${counted(sheets, 'sheet')} in ${counted(files, 'file')}${open}`,
      ...(lacking === ''
        ? []
        : [
            `  its PDF has boxes for ${counted([...lacking].length, 'character')} that its typeface lacks, ${plainLine(lacking)}; --font names a typeface that has them`,
          ]),
      ...kept.map((path) => `  kept ${plainLine(path)}, which is of an earlier packet and was changed by hand since`),
    ];
  });
  return `${[...lines, `${counted(packets.length, 'packet')} written as ${wanted.join(', ')}.`].join('\n')}\n`;
}

async function settingsOf(options: PacketCommandOptions, workingFolder: string): Promise<PacketSettings> {
  const { readLength, readSlack } = await import('@fieldpair/shared/documents');
  const slack = options.slack === undefined ? undefined : readSlack(options.slack);
  if (options.slack !== undefined && !slack) {
    throw new CommandFailure(`--slack ${options.slack} is no rule; write it as "5 % + 3 ft", "5 %" or "1 m"`);
  }
  const reel = options.reel === undefined ? undefined : readLength(options.reel);
  if (options.reel !== undefined && reel === undefined) {
    throw new CommandFailure(`--reel ${options.reel} is no length; write it as "1000 ft" or "305 m"`);
  }
  const font = options.font === undefined ? undefined : resolve(workingFolder, options.font);
  if (font !== undefined) {
    const problem = await (await import('../../packet/write-packet.js')).fontProblem(font);
    if (problem !== undefined) throw new CommandFailure(`cannot use the font ${options.font}: ${problem}`);
  }
  return {
    formats: options.format,
    date: options.date ?? today(process.env.SOURCE_DATE_EPOCH),
    paper: options.paper,
    ...(options.unit && { unit: options.unit }),
    ...(options.revision !== undefined && { revision: options.revision }),
    ...(font !== undefined && { font }),
    ...(slack && { slack }),
    ...(reel !== undefined && { reel }),
  };
}

/** Here and now, unless the builder of the files says otherwise (https://reproducible-builds.org/specs/source-date-epoch). */
function today(epoch: string | undefined): string {
  if (epoch !== undefined && /^\d{1,11}$/.test(epoch)) return new Date(Number(epoch) * 1000).toISOString().slice(0, 10);
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
}

function takeFormats(written: string): readonly Format[] {
  const wanted = written.split(',').map((one) => one.trim());
  const unknown = wanted.find((one) => !(formats as readonly string[]).includes(one));
  if (unknown !== undefined)
    throw new InvalidArgumentError(`${unknown || 'nothing'} is none of ${formats.join(', ')}.`);
  return formats.filter((format) => wanted.includes(format));
}

function takeDate(written: string): string {
  const date = /^\d{4}-\d{2}-\d{2}$/.test(written) ? new Date(`${written}T00:00:00Z`) : undefined;
  // The calendar has no 30 February, which would count on into March.
  if (!date || Number.isNaN(date.getTime()) || date.toISOString().slice(0, 10) !== written) {
    throw new InvalidArgumentError('It is no day written as YYYY-MM-DD.');
  }
  return written;
}
