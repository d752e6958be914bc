/** The server over stdio, with the method names and shapes of the Language Server Protocol 3.17 written out here. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { MessageConnection } from 'vscode-languageserver/node';
import type { Figures } from '../protocol.js';
import { catalogue, store, wrong } from './language-server.texts.js';
import { type RunningServer, startServer } from './testing/start-server.js';

interface Diagnostic {
  readonly code: string;
  readonly source: string;
  readonly message: string;
  readonly range: Range;
}
interface Range {
  readonly start: { readonly line: number; readonly character: number };
  readonly end: { readonly line: number; readonly character: number };
}
interface WorkspaceEdit {
  readonly changes: Readonly<Record<string, readonly { readonly range: Range; readonly newText: string }[]>>;
}

let folder: string;
let server: RunningServer;
let client: MessageConnection;
let version = 1;
let settings: object = {};
const statuses: { checking: boolean; files: number }[] = [];
const uriOf = (name: string) => pathToFileURL(join(folder, name)).href;
const position = (text: string, needle: string, plus = 0) => {
  const lines = text.slice(0, text.indexOf(needle) + plus).split('\n');
  return { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 };
};
const at = (needle: string, plus = 0) => ({
  textDocument: { uri: uriOf('store.pair') },
  position: position(store, needle, plus),
});
const change = (text: string) =>
  client.sendNotification('textDocument/didChange', {
    textDocument: { uri: uriOf('store.pair'), version: ++version },
    contentChanges: [{ text }],
  });
const published = (name: string) => (server.published.get(uriOf(name)) ?? []) as readonly Diagnostic[];
const codes = (name: string) => published(name).map(({ code }) => code);

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'fieldpair-server-'));
  writeFileSync(join(folder, 'catalogue.pair'), catalogue);
  writeFileSync(join(folder, 'store.pair'), store);
  server = await startServer({
    folder,
    settings: () => settings,
    prepare: (connection) =>
      connection.onNotification('fieldpair/status', (status: { checking: boolean; files: number }) => {
        statuses.push(status);
      }),
  });
  ({ client } = server);
  await client.sendNotification('textDocument/didOpen', {
    textDocument: { uri: uriOf('store.pair'), languageId: 'fieldpair', version, text: store },
  });
});

afterAll(async () => {
  await server.stop();
  rmSync(folder, { recursive: true, force: true });
});

describe('the language server over stdio', () => {
  it('checks the workspace and tells of it', async () => {
    const totals = await client.sendRequest<{ files: number; stores: number; buses: number }>(
      'fieldpair/checkWorkspace',
    );
    expect(totals).toMatchObject({ files: 2, stores: 1, buses: 1 });
    expect(statuses.at(-1)).toMatchObject({ checking: false, files: 2 });
  });

  it('publishes what is wrong as the text changes, and offers its mending', async () => {
    await change(wrong);
    await expect.poll(() => codes('store.pair')).toContain('unknown-name');
    const found = published('store.pair').find(({ code }) => code === 'unknown-name');
    expect(found).toMatchObject({
      source: 'fieldpair',
      range: { start: position(wrong, 'Pear22'), end: position(wrong, 'Pear22', 6) },
    });
    const actions = await client.sendRequest<{ title: string; edit: WorkspaceEdit }[]>('textDocument/codeAction', {
      textDocument: { uri: uriOf('store.pair') },
      range: found?.range,
      context: { diagnostics: [], only: ['quickfix'] },
    });
    const fix = actions.find(({ title }) => title.includes('Pair22'));
    expect(fix?.edit.changes[uriOf('store.pair')]).toEqual([{ range: found?.range, newText: 'Pair22' }]);
    await change(store);
    await expect.poll(() => codes('store.pair')).not.toContain('unknown-name');
  });

  it('hovers over a run, a landing and a device', async () => {
    const hover = async (needle: string, plus = 1) =>
      (await client.sendRequest<{ contents: { value: string } }>('textDocument/hover', at(needle, plus))).contents
        .value;
    // 50 ft out and back are 100 ft of one conductor. NBS Handbook 100, Copper Wire Tables, has 16.14 ohm in 1000 ft of
    // solid AWG 22 at 20 degC; stranding adds a few per cent.
    const run = await hover('50 ft to');
    expect(run).toContain('50 ft');
    expect(run).toContain('150 ft');
    const [, resistance] = /out and back: ([\d.]+) ohm/.exec(run) ?? [];
    expect(Number(resistance)).toBeGreaterThanOrEqual(1.61);
    expect(Number(resistance)).toBeLessThan(1.614 * 1.08);
    const landing = await hover('caseB :');
    expect(landing).toContain('address 14');
    expect(landing).toContain('beside it: caseA (50 ft)');
    expect(await hover('Head\n')).toContain('Sits on the rack');
  });

  it('goes to definitions in other files and finds references', async () => {
    const [target] = await client.sendRequest<{ targetUri: string; targetRange: Range }[]>(
      'textDocument/definition',
      at('Board', 1),
    );
    expect(target?.targetUri).toBe(uriOf('catalogue.pair'));
    expect(target?.targetRange.start).toEqual(position(catalogue, 'Board'));
    const references = await client.sendRequest<unknown[]>('textDocument/references', {
      ...at('Board', 1),
      context: { includeDeclaration: true },
    });
    expect(references).toHaveLength(3);
  });

  it('renames across files', async () => {
    const { changes } = await client.sendRequest<WorkspaceEdit>('textDocument/rename', {
      ...at('Board', 1),
      newName: 'Case board',
    });
    expect(changes[uriOf('catalogue.pair')]).toHaveLength(1);
    expect(changes[uriOf('store.pair')]?.map(({ newText }) => newText)).toEqual(['"Case board"', '"Case board"']);
  });

  it('refuses a name that is taken, in one line', async () => {
    const refused = client.sendRequest('textDocument/rename', { ...at('Board', 1), newName: 'Head' });
    await expect(refused).rejects.toThrow(
      /^another device is called Head already; choose another name for device Board$/,
    );
  });

  it('tells the colours of names', async () => {
    const { data } = (await client.sendRequest('textDocument/semanticTokens/full', {
      textDocument: { uri: uriOf('store.pair') },
    })) as { data: number[] };
    // The store's name: line 2, column 6, nine characters, the first type of the legend.
    expect(data.slice(0, 4)).toEqual([2, 6, 9, 0]);
    expect(data.length / 5).toBeGreaterThan(8);
  });

  it('shows the outline, hints, lenses, links and figures', async () => {
    const { textDocument } = at('store');
    const [outline] = await client.sendRequest<{ name: string; children: { name: string }[] }[]>(
      'textDocument/documentSymbol',
      { textDocument },
    );
    expect(outline?.name).toBe('northgate');
    expect(outline?.children.map(({ name }) => name)).toEqual(['head', 'cases']);
    const range = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
    const hints = await client.sendRequest<{ label: string }[]>('textDocument/inlayHint', { textDocument, range });
    expect(hints.map(({ label }) => label)).toEqual(['END', '100 ft', '12 to 13 unused', '150 ft', 'END']);
    const lenses = await client.sendRequest<{ command: { title: string } }[]>('textDocument/codeLens', {
      textDocument,
    });
    expect(lenses.map(({ command }) => command.title)).toEqual([
      'Draw this store',
      '150 ft · 3 landings · ends at head and caseB',
      'Waveforms',
    ]);
    const links = await client.sendRequest<{ target: string }[]>('textDocument/documentLink', { textDocument });
    expect(links.map(({ target }) => target)).toEqual([uriOf('catalogue.pair')]);
    const folds = await client.sendRequest<unknown[]>('textDocument/foldingRange', { textDocument });
    expect(folds.length).toBeGreaterThan(1);
    const figures = await client.sendRequest<Figures>('fieldpair/figures', {
      uri: textDocument.uri,
      position: position(store, '50 ft to'),
    });
    expect(figures.title).toBe('northgate, bus cases');
    expect(figures.rows.map(({ cells }) => cells[0])).toEqual(['head', 'caseA', 'caseB']);
  });

  it('follows the settings', async () => {
    const { textDocument } = at('store');
    const range = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
    const labels = async () =>
      (await client.sendRequest<{ label: string }[]>('textDocument/inlayHint', { textDocument, range })).map(
        ({ label }) => label,
      );
    settings = { lengthUnit: 'm', hints: { ends: false, addressGaps: false }, codeLens: 'no boolean' };
    await client.sendNotification('workspace/didChangeConfiguration', { settings: null });
    // 100 ft and 150 ft in metres, by the international foot of 0.3048 m (NIST SP 811, B.6).
    await expect.poll(labels).toEqual(['30.5 m', '45.7 m']);
    settings = {};
    await client.sendNotification('workspace/didChangeConfiguration', { settings: null });
    await expect.poll(labels).toHaveLength(5);
  });

  it('follows files that change on disk', async () => {
    writeFileSync(join(folder, 'catalogue.pair'), catalogue.replace('device Board', 'device Bored'));
    const changes = [{ uri: uriOf('catalogue.pair'), type: 2 }];
    await client.sendNotification('workspace/didChangeWatchedFiles', { changes });
    await expect.poll(() => codes('store.pair')).toContain('unknown-name');
    rmSync(join(folder, 'catalogue.pair'));
    await client.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: uriOf('catalogue.pair'), type: 3 }],
    });
    await expect.poll(() => codes('store.pair')).toContain('import-missing');
    writeFileSync(join(folder, 'catalogue.pair'), catalogue);
    await client.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: uriOf('catalogue.pair'), type: 1 }],
    });
    await expect.poll(() => codes('store.pair')).not.toContain('import-missing');
    expect(codes('store.pair')).not.toContain('unknown-name');
  });

  it('completes ports, addresses, cables and keywords', async () => {
    interface Offered {
      readonly label: string;
      readonly detail?: string;
      readonly documentation?: { readonly value: string };
    }
    let offered: Offered[] = [];
    const complete = async (before: string, after = '\n  }\n}\n') => {
      const text = `${store.slice(0, store.indexOf('  }\n}\n'))}${before}${after}`;
      await change(text);
      const { items } = await client.sendRequest<{ items: Offered[] }>('textDocument/completion', {
        textDocument: { uri: uriOf('store.pair') },
        position: position(text, before, before.length),
      });
      offered = items;
      return items.map(({ label }) => label);
    };
    expect((await complete('    20 ft to caseA.'))[0]).toBe('field');
    expect((await complete('    20 ft to caseC : Board address '))[0]).toBe('15');
    expect(await complete('    20 ft on ')).toContain('Pair22');
    expect((await complete('    20 '))[0]).toBe('ft');
    expect(await complete('    t')).toContain('tap');
    const tap = offered.find(({ label }) => label === 'tap');
    expect(tap?.detail).toBe('[tap] LENGTH [OPTION …] [to LANDING]');
    expect(tap?.documentation?.value).toContain('the run is a tap');
    // After a landing, `shield` may be that of the landing and may begin what is said of the whole bus.
    await complete('    20 ft to caseC : Board sh');
    const shield = offered.find(({ label }) => label === 'shield');
    expect(shield?.documentation?.value).toMatch(/shield \(through[\s\S]*shield earthed at/);
    // Statements of other kinds of bus mean nothing here, and a comment is nobody's statement.
    const words = await complete('    ');
    expect(words).toContain('ambient');
    for (const foreign of ['guide', 'sample', 'breaks', 'cords', 'in']) expect(words).not.toContain(foreign);
    expect(await complete('    // from ')).toEqual([]);
    await change(store);
  });

  it('stays up and says nothing wrong whatever the text is', async () => {
    for (const text of [
      '',
      '\u{1F600}',
      'store x { bus b : modbus-rtu { from',
      '{'.repeat(2000),
      store.slice(0, 137),
    ]) {
      await change(text);
      for (const method of ['documentSymbol', 'codeLens', 'documentLink', 'foldingRange', 'formatting']) {
        await client.sendRequest(`textDocument/${method}`, {
          ...at('store'),
          options: { tabSize: 2, insertSpaces: true },
        });
      }
      for (const method of ['hover', 'definition', 'completion', 'documentHighlight', 'prepareRename']) {
        await client.sendRequest(`textDocument/${method}`, {
          textDocument: at('store').textDocument,
          position: { line: 0, character: 1 },
        });
      }
    }
    await change(store);
    await expect.poll(() => codes('store.pair')).not.toContain('syntax');
    expect(server.process.exitCode).toBeNull();
  });
});
