/** `fieldpair draw`: the wiring of stores as SVG, the same drawing that the editor shows. */
import { statSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { Project } from '@fieldpair/language';
import { counted, createStudy, drawStore, plainLine, printColours, type Store, sceneSvg } from '@fieldpair/shared';
import type { Command } from 'commander';
import { makeFolder } from '../../files/make-folder.js';
import { fileProblem, NodeFiles } from '../../files/node-files.js';
import { pairFiles, shownPath } from '../../files/pair-files.js';
import { CommandFailure, exitStatus } from '../failure.js';
import { Progress } from '../progress.js';
import type { Terminal } from '../terminal.js';
import { addFile } from './add-file.js';

interface DrawOptions {
  readonly bus?: string;
  readonly scale?: true;
  readonly out?: string;
}

export function addDraw(program: Command, terminal: Terminal, finish: (status: number) => void): void {
  program
    .command('draw')
    .summary('draw stores as SVG')
    .description(
      'Draws the stores of .pair files, and of every .pair file in the folders: each bus as one line in walking order,\n' +
        'with its findings. One store goes to the output unless a file is named; several need a folder.',
    )
    .argument('<path...>', 'files and folders')
    .option('--bus <name>', 'only the bus of this name')
    .option('--scale', 'landings stand to scale, where the cable has run so far')
    .option('--out <file|folder>', 'write NAME.svg, or STORE.svg for each store into a folder')
    .action((paths: string[], options: DrawOptions) => finish(draw(paths, options, terminal)));
}

function draw(paths: readonly string[], options: DrawOptions, terminal: Terminal): number {
  const { workingFolder } = terminal;
  const files = pairFiles(paths, workingFolder);
  const project = new Project(new NodeFiles(files));
  const progress = new Progress(terminal);
  try {
    for (const [index, file] of files.entries()) {
      progress.show(() => `Reading ${index + 1} of ${counted(files.length, 'file')}`);
      addFile(project, file, workingFolder);
    }
    const drawings = storesOf(project, files).flatMap((store) => drawingOf(project, store, options));
    progress.end();
    if (drawings.length === 0) {
      throw new CommandFailure(
        options.bus === undefined
          ? 'there is no store in these files'
          : `there is no bus ${options.bus} in these files`,
      );
    }
    write(drawings, options.out, terminal);
    return exitStatus.nothingFound;
  } finally {
    progress.end();
  }
}

/** Each store once, however many files continue it. */
function storesOf(project: Project, files: readonly string[]): Store[] {
  const stores = new Map<string, Store>();
  for (const file of files) {
    for (const store of project.storesOf(file)) stores.set(`${store.place.start} ${store.place.file}`, store);
  }
  return [...stores.values()];
}

interface StoreDrawing {
  readonly name: string;
  readonly svg: string;
}

function drawingOf(project: Project, store: Store, { bus: wanted, scale }: DrawOptions): StoreDrawing[] {
  const buses = wanted === undefined ? store.buses : store.buses.filter(({ name }) => name === wanted);
  if (wanted !== undefined && buses.length === 0) return [];
  const files = new Set([store.place.file, ...store.buses.map(({ place }) => place.file)]);
  const findings = [...files].flatMap((file) => project.findingsOf(file));
  const studies = buses.map((bus) => createStudy(store, bus));
  const scene = drawStore(store, studies, findings, { scale: scale === true });
  return [{ name: store.name, svg: sceneSvg(scene, printColours) }];
}

function write(drawings: readonly StoreDrawing[], out: string | undefined, terminal: Terminal): void {
  const [first, second] = drawings;
  if (out === undefined) {
    if (second) throw new CommandFailure(`${drawings.length} stores need a folder to be written to: add --out FOLDER`);
    if (first) terminal.out(first.svg);
    return;
  }
  const target = resolve(terminal.workingFolder, out);
  if (first && !second && out.toLowerCase().endsWith('.svg') && !isFolder(target)) {
    writeFile(target, first.svg, terminal);
    return;
  }
  const taken = new Set<string>();
  for (const { name, svg } of drawings) writeFile(join(target, `${fileNameOf(name, taken)}.svg`), svg, terminal);
}

function writeFile(path: string, text: string, { workingFolder, out }: Terminal): void {
  const shown = shownPath(path, workingFolder);
  try {
    makeFolder(dirname(path));
    writeFileSync(path, text);
  } catch (error) {
    throw new CommandFailure(`cannot write ${shown}: ${fileProblem(error)}`);
  }
  out(`${plainLine(shown)}\n`);
}

const isFolder = (path: string) => statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;

/** A name for a file on every system; two stores of one name get two files, on systems that know no case too. */
function fileNameOf(name: string, taken: Set<string>): string {
  const plain = name.replaceAll(/[^\p{L}\p{N}_-]+/gu, '-').slice(0, 80) || 'store';
  let chosen = plain;
  for (let number = 2; taken.has(chosen.toLowerCase()); number++) chosen = `${plain}-${number}`;
  taken.add(chosen.toLowerCase());
  return chosen;
}
