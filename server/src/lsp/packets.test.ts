/** What a client gets that asks for the installer's packet. */
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { plainStore } from '../packet/testing/stores.js';
import type { PacketPage, PacketParams, SavedPacket, SavePacketParams } from '../protocol.js';
import { type RunningServer, startServer } from './testing/start-server.js';

let folder: string;
let server: RunningServer;
const uriOf = (name: string) => pathToFileURL(join(folder, name)).href;
const second = 'store southgate "Southgate Market" {\n}\n';

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'fieldpair-packets-'));
  writeFileSync(join(folder, 'store.pair'), plainStore + second);
  writeFileSync(join(folder, 'cables.pair'), 'cable Spare22 {\n}\n');
  server = await startServer({ folder });
  for (const name of ['store.pair', 'cables.pair']) {
    const text = readFileSync(join(folder, name), 'utf8');
    const textDocument = { uri: uriOf(name), languageId: 'fieldpair', version: 1, text };
    await server.client.sendNotification('textDocument/didOpen', { textDocument });
  }
});

afterAll(async () => {
  await server.stop();
  rmSync(folder, { recursive: true, force: true });
});

const params = (name: string, line: number): PacketParams => ({
  uri: uriOf(name),
  position: { line, character: 0 },
  paper: 'a4',
  date: '2026-03-14',
});
const page = (name: string, line = 0): Promise<PacketPage | null> =>
  server.client.sendRequest('fieldpair/packet', params(name, line));
const save = (differing: Partial<SavePacketParams>): Promise<SavedPacket> =>
  server.client.sendRequest('fieldpair/savePacket', {
    ...params('store.pair', 0),
    formats: ['pdf', 'xlsx', 'html'],
    folder: uriOf('out'),
    ...differing,
  });

describe('a packet from the server', () => {
  it('is of the store that the cursor is in, or of the first of the file', async () => {
    expect(await page('store.pair')).toMatchObject({ title: 'Northgate Market' });
    const last = (plainStore + second).split('\n').length - 2;
    expect(await page('store.pair', last)).toMatchObject({ title: 'Southgate Market' });
    expect(await page('cables.pair')).toBeNull();
    const shown = await page('store.pair');
    expect(shown?.html).toMatch(/^<!doctype html>[\s\S]*default-src 'none'[\s\S]*size: A4[\s\S]*caseB/);
  });

  it('is saved in the formats that are asked for', async () => {
    const saved = await save({});
    expect(saved).toEqual({ folder: uriOf('out/northgate'), files: 3 });
    expect(readdirSync(join(folder, 'out/northgate')).sort()).toEqual([
      '.fieldpair-packet.json',
      'northgate-packet.html',
      'northgate-packet.pdf',
      'northgate-packet.xlsx',
    ]);
    expect(readFileSync(join(folder, 'out/northgate/northgate-packet.pdf'), 'latin1')).toMatch(/^%PDF-1\.7/);
  });

  it('names the characters that its PDF cannot show, and takes a font for them', async () => {
    const text = plainStore.replace('"Cases"', '"\u51b7\u51cd\u5eab"');
    const textDocument = { uri: uriOf('store.pair'), version: 2 };
    await server.client.sendNotification('textDocument/didChange', { textDocument, contentChanges: [{ text }] });
    expect(await save({ formats: ['pdf'] })).toMatchObject({ files: 1, lacking: '\u51b7\u51cd\u5eab' });
    writeFileSync(join(folder, 'none.ttf'), 'no font');
    const font = join(folder, 'none.ttf');
    expect(await save({ formats: ['pdf'], font })).toEqual({
      problem: `the font ${font} cannot be used: it is no TrueType or OpenType font`,
    });
    // No other format needs it.
    expect(await save({ formats: ['csv'], font })).not.toHaveProperty('problem');
    const sound = fileURLToPath(import.meta.resolve('dejavu-fonts-ttf/ttf/DejaVuSerif.ttf'));
    expect(await save({ formats: ['pdf'], font: sound })).toMatchObject({ files: 1 });
  });

  it('that cannot be written says why', async () => {
    writeFileSync(join(folder, 'taken'), '');
    const saved = await save({ folder: uriOf('taken') });
    expect(saved).toMatchObject({ problem: expect.stringMatching(/^the packet could not be written: \S/) });
    expect(existsSync(join(folder, 'taken/northgate'))).toBe(false);
    expect(await save({ uri: uriOf('cables.pair') })).toEqual({ problem: 'there is no store at this place any more' });
  });
});
