/** `fieldpair figures`: the computed numbers of files and folders, bus by bus and landing by landing. */
import { Project } from '@fieldpair/language';
import { counted, createStudy, type Store } from '@fieldpair/shared';
import { type Command, Option } from 'commander';
import { NodeFiles } from '../../files/node-files.js';
import { pairFiles } from '../../files/pair-files.js';
import { exitStatus } from '../failure.js';
import { figuresCsv } from '../formats/figures-csv.js';
import { figuresJson } from '../formats/figures-json.js';
import { figuresText } from '../formats/figures-text.js';
import type { FiguresFormat } from '../formats/format.js';
import { Progress } from '../progress.js';
import type { Terminal } from '../terminal.js';
import { addFile } from './add-file.js';

const formats = { text: figuresText, json: figuresJson, csv: figuresCsv } as const satisfies Record<
  string,
  FiguresFormat
>;

interface FiguresOptions {
  readonly format: keyof typeof formats;
}

export function addFigures(program: Command, terminal: Terminal, finish: (status: number) => void): void {
  program
    .command('figures')
    .summary('compute lengths, meter readings, levels and delays')
    .description('Computes the figures of every bus in .pair files, and in every .pair file of the folders.')
    .argument('<path...>', 'files and folders')
    .addOption(new Option('--format <format>', 'how to print').choices(Object.keys(formats)).default('text'))
    .action((paths: string[], options: FiguresOptions) => finish(figures(paths, options, terminal)));
}

function figures(paths: readonly string[], options: FiguresOptions, terminal: Terminal): number {
  const { workingFolder } = terminal;
  const files = pairFiles(paths, workingFolder);
  const project = new Project(new NodeFiles(files));
  const progress = new Progress(terminal);
  try {
    // A store that several files continue is met in each of them.
    const stores = new Map<string, Store>();
    for (const [index, file] of files.entries()) {
      progress.show(() => `Reading ${index + 1} of ${counted(files.length, 'file')}`);
      addFile(project, file, workingFolder);
    }
    for (const file of files) {
      for (const store of project.storesOf(file)) stores.set(`${store.place.start} ${store.place.file}`, store);
    }
    const studied = [...stores.values()].map((store) => ({
      store,
      studies: store.buses.map((bus) => createStudy(store, bus)),
    }));
    const text = formats[options.format](studied, terminal);
    progress.end();
    terminal.out(text);
    return exitStatus.nothingFound;
  } finally {
    progress.end();
  }
}
