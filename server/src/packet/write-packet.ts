/** Writes a packet into a folder, in the formats that are wanted. */
import { writeFileSync } from 'node:fs';
import { dirname, extname, join } from 'node:path';
import type { Packet } from '@fieldpair/shared/documents';
import { makeFolder } from '../files/make-folder.js';
import { safeName } from '../files/safe-name.js';
import { contentHash, readWritten, removeUnchanged, writeWritten } from './leftovers.js';

export const packetFormats = ['html', 'pdf', 'csv', 'xlsx', 'svg'] as const;
export type PacketFormat = (typeof packetFormats)[number];

/** A file of a packet: where it goes below the packet's folder, with forward slashes, and what it holds. */
export interface PacketFile {
  readonly path: string;
  readonly content: string | Uint8Array;
  /** Characters of the packet that it cannot show. */
  readonly lacking?: string;
}

/**
 * What a packet is in some formats. Each format is loaded only when it is wanted.
 *
 * @param font a file with the letters that the typeface of PDFs lacks; one that cannot be read is as good as none
 */
export async function packetFiles(
  packet: Packet,
  formats: readonly PacketFormat[],
  font?: string,
): Promise<PacketFile[]> {
  const name = `${safeName(packet.store, 'store')}-packet`;
  const files: PacketFile[] = [];
  for (const format of packetFormats)
    if (formats.includes(format)) files.push(...(await writers[format](packet, name, font)));
  return files;
}

/** Why a file cannot be such a font, as a clause; undefined where it can. */
export async function fontProblem(font: string): Promise<string | undefined> {
  const face = (await import('./pdf.js')).readFace(font);
  return 'problem' in face ? face.problem : undefined;
}

const writers: Readonly<Record<PacketFormat, (packet: Packet, name: string, font?: string) => Promise<PacketFile[]>>> =
  {
    html: async (packet, name) => [{ path: `${name}.html`, content: (await import('./html.js')).packetHtml(packet) }],
    pdf: async (packet, name, font) => {
      const { packetPdf, readFace } = await import('./pdf.js');
      const face = font === undefined ? undefined : readFace(font);
      const { bytes, lacking } = await packetPdf(packet, face && 'problem' in face ? undefined : face);
      return [{ path: `${name}.pdf`, content: bytes, lacking }];
    },
    csv: async (packet) =>
      (await import('./csv.js')).packetCsv(packet).map(({ name, text }) => ({ path: `tables/${name}`, content: text })),
    xlsx: async (packet, name) => [
      { path: `${name}.xlsx`, content: await (await import('./xlsx.js')).packetXlsx(packet) },
    ],
    svg: async (packet) =>
      (await import('./svg-files.js'))
        .packetSvgs(packet)
        .map(({ name, text }) => ({ path: `diagrams/${name}`, content: text })),
  };

/**
 * Makes the folders that are missing, replaces files of the same names and removes what an earlier run wrote in the same
 * formats and this one does not; nothing else is touched.
 *
 * @returns paths of what an earlier run wrote, somebody has changed since, and so stays
 */
export function writeFiles(folder: string, files: readonly PacketFile[], formats: readonly PacketFormat[]): string[] {
  makeFolder(folder);
  const written = new Map(files.map(({ path, content }) => [path, contentHash(content)]));
  const earlier = [...readWritten(folder)].filter(([path]) => !written.has(path));
  const isReplaced = (path: string) => (formats as readonly string[]).includes(extname(path).slice(1));
  const kept = removeUnchanged(folder, new Map(earlier.filter(([path]) => isReplaced(path))));
  const others = earlier.filter(([path]) => !isReplaced(path));
  // Before the files, so that none is ever there unlisted.
  writeWritten(folder, new Map([...others, ...written]));
  for (const { path, content } of files) {
    const file = join(folder, ...path.split('/'));
    makeFolder(dirname(file));
    writeFileSync(file, content);
  }
  return kept;
}
