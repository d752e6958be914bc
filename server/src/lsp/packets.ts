/** Answers what a client asks about the installer's packet of a store. */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Desk } from '@fieldpair/language/services';
import type { Store } from '@fieldpair/shared';
import { URI } from 'langium';
import type { Connection } from 'vscode-languageserver';
import { gitRevision } from '../files/git-revision.js';
import { fileProblem } from '../files/node-files.js';
import { safeName } from '../files/safe-name.js';
import type * as packets from '../packet/index.js';
import { findingsOf } from '../packet/store-findings.js';
import type { PacketPage, PacketParams, SavedPacket, SavePacketParams, ServerRequests } from '../protocol.js';
import { disk, fileOf } from './disk.js';

/**
 * @param bundle of packet/index.ts: most sessions never need it
 * @param settled when nothing that the findings of these files need is being simulated any more
 */
export function servePackets(
  connection: Connection,
  desk: Desk,
  bundle: string,
  settled: (files: ReadonlySet<string>) => Promise<void>,
  failed: (error: unknown) => void,
): void {
  const load = async (): Promise<typeof packets> => (await import(pathToFileURL(bundle).href)) as typeof packets;

  const made = async ({ uri, position, paper, date }: PacketParams) => {
    const store = storeAt(desk, fileOf(uri), position);
    if (!store) return undefined;
    const { makePacket } = await load();
    const { lengthUnit } = desk.settings;
    const revision = revisionOf(desk, store);
    const packet = makePacket(
      store,
      store.buses.map((bus) => desk.studyOf({ store, bus })),
      {
        date,
        paper,
        findings: findingsOf(desk.project, store, filesOf(store)),
        ...(lengthUnit !== 'asWritten' && { unit: lengthUnit }),
        ...(revision !== undefined && { revision }),
      },
    );
    return packet;
  };

  const page = async (params: PacketParams): Promise<PacketPage | null> => {
    try {
      const packet = await made(params);
      if (!packet) return null;
      const { packetFiles } = await load();
      const [file] = await packetFiles(packet, ['html']);
      return { title: packet.title, html: String(file?.content) };
    } catch (error) {
      failed(error);
      return null;
    }
  };

  const save = async (params: SavePacketParams): Promise<SavedPacket> => {
    try {
      // A page is followed while somebody types; what is kept says all that is open.
      const store = storeAt(desk, fileOf(params.uri), params.position);
      const written = store ? filesOf(store) : [];
      for (const file of written) desk.project.findingsOf(file);
      await settled(new Set(written));
      const packet = await made(params);
      if (!packet) return { problem: 'there is no store at this place any more' };
      const { fontProblem, packetFiles, writeFiles } = await load();
      const { font, formats } = params;
      const unusable = font === undefined || !formats.includes('pdf') ? undefined : await fontProblem(font);
      if (unusable !== undefined) return { problem: `the font ${font} cannot be used: ${unusable}` };
      const files = await packetFiles(packet, formats, font);
      const folder = join(URI.parse(params.folder).fsPath, safeName(packet.store, 'store'));
      try {
        writeFiles(folder, files, formats);
      } catch (error) {
        return { problem: `the packet could not be written: ${fileProblem(error)}` };
      }
      const lacking = files.map((file) => file.lacking ?? '').join('');
      return { folder: URI.file(folder).toString(), files: files.length, ...(lacking && { lacking }) };
    } catch (error) {
      failed(error);
      return { problem: 'the packet could not be made; the log says why' };
    }
  };

  connection.onRequest('fieldpair/packet' satisfies keyof ServerRequests, page);
  connection.onRequest('fieldpair/savePacket' satisfies keyof ServerRequests, save);
}

/** The last store that begins before a place, or else the first of the file. */
function storeAt(desk: Desk, file: string, position: PacketParams['position']): Store | undefined {
  const stores = desk.project.storesOf(file);
  const offset = desk.offsetOf(file, position);
  return stores.findLast(({ place }) => place.file === file && place.start <= offset) ?? stores[0];
}

const filesOf = ({ place, buses, nodes }: Store): string[] => [
  ...new Set([place, ...buses.map((bus) => bus.place), ...nodes.map((node) => node.place)].map(({ file }) => file)),
];

/** What git says of the files on disk, and that the texts are newer where they are. */
function revisionOf(desk: Desk, store: Store): string | undefined {
  const files = filesOf(store).filter((file) => file.startsWith('file:'));
  const revision = gitRevision(files.map((file) => URI.parse(file).fsPath));
  if (revision === undefined || revision.endsWith('-modified')) return revision;
  const isUnsaved = files.some((file) => {
    const saved = disk.read(file);
    return !('text' in saved) || saved.text !== desk.project.textOf(file);
  });
  return isUnsaved ? `${revision}-modified` : revision;
}
