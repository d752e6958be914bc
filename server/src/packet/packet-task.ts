/** One packet from texts to files: what a command does for each store, in its own thread or in another. */
import { Project } from '@fieldpair/language';
import { createStudy, type Store } from '@fieldpair/shared';
import { makePacket, type PacketOptions } from '@fieldpair/shared/documents';
import { gitRevision } from '../files/git-revision.js';
import { fileProblem, NodeFiles } from '../files/node-files.js';
import { findingsOf } from './store-findings.js';
import { type PacketFormat, packetFiles, writeFiles } from './write-packet.js';

/** Plain data, because it passes between threads. */
export interface PacketTask {
  /** The files in which the store is written. */
  readonly files: readonly string[];
  readonly store: string;
  /** Where its packet goes. */
  readonly folder: string;
}

export type PacketSettings = Omit<PacketOptions, 'findings'> & {
  readonly formats: readonly PacketFormat[];
  /** A file with the letters that the typeface of PDFs lacks. */
  readonly font?: string;
};

export type PacketResult =
  | {
      readonly sheets: number;
      readonly files: number;
      readonly errors: number;
      /** What stays of an earlier run because somebody has changed it. */
      readonly kept: readonly string[];
      /** Characters that the PDF cannot show. */
      readonly lacking: string;
    }
  /** Why there is none, as a clause. */
  | { readonly problem: string };

export async function packetOfTask(
  { files, store: name, folder }: PacketTask,
  { formats, font, ...options }: PacketSettings,
): Promise<PacketResult> {
  const project = new Project(new NodeFiles());
  for (const file of files) project.add(file);
  // A part of a store counts only once its file was read.
  for (const file of files) project.textOf(file);
  const store = files.flatMap((file) => project.storesOf(file)).find((one) => one.name === name);
  if (!store) return { problem: 'its text has changed meanwhile' };
  const findings = findingsOf(project, store, files);
  const revision = options.revision ?? gitRevision(files);
  const studies = store.buses.map((bus) => createStudy(store, bus));
  const packet = makePacket(store, studies, { ...options, findings, ...(revision !== undefined && { revision }) });
  const made = await packetFiles(packet, formats, font);
  let kept: readonly string[];
  try {
    kept = writeFiles(folder, made, formats);
  } catch (error) {
    return { problem: fileProblem(error) };
  }
  const errors = findings.filter(({ severity, waived }) => severity === 'error' && !waived).length;
  return {
    sheets: packet.sheets.length,
    files: made.length,
    errors,
    kept,
    lacking: made.map(({ lacking = '' }) => lacking).join(''),
  };
}

/** The files in which each store is written, as far as the project knows them, stores in the order of the files. */
export function storesWithFiles(project: Project, files: readonly string[]): Map<Store, string[]> {
  const stores = new Map<string, { store: Store; files: string[] }>();
  for (const file of files) {
    for (const store of project.storesOf(file)) {
      const key = `${store.place.start} ${store.place.file}`;
      const known = stores.get(key) ?? { store, files: [] };
      known.files.push(file);
      stores.set(key, known);
    }
  }
  return new Map([...stores.values()].map((one) => [one.store, one.files]));
}
