/** Findings that take a simulation, over stdio: they come after a pause, stay while it runs, and go with their fix. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, it } from 'vitest';
import { marginLow } from '../../../shared/src/rules/load/margin-low.js';
import { startServer } from './testing/start-server.js';

interface Diagnostic {
  readonly code: string;
  readonly range: object;
}
interface Action {
  readonly title: string;
  readonly edit: { readonly changes: Readonly<Record<string, readonly { readonly newText: string }[]>> };
}

it('a thin margin is found after a pause, and gone with the rate that mends it', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'fieldpair-simulated-'));
  const { bad, good } = marginLow.explanation;
  writeFileSync(join(folder, 'thin.pair'), good);
  const uri = pathToFileURL(join(folder, 'thin.pair')).href;
  const server = await startServer({ folder });
  const { client } = server;
  const told = () =>
    ((server.published.get(uri) ?? []) as readonly Diagnostic[]).filter((one) => one.code === 'margin-low');
  let version = 1;
  const change = (text: string) =>
    client.sendNotification('textDocument/didChange', {
      textDocument: { uri, version: ++version },
      contentChanges: [{ text }],
    });
  try {
    await client.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: 'fieldpair', version, text: good },
    });
    await client.sendRequest('fieldpair/checkWorkspace');
    expect(told()).toEqual([]);
    await change(bad);
    await expect.poll(told, { timeout: 20_000 }).toHaveLength(1);
    // What was found stands while the text goes on to change.
    await change(bad.replace('10 ft to n1', '11 ft to n1'));
    await expect.poll(told, { timeout: 20_000 }).toHaveLength(1);
    const actions = await client.sendRequest<Action[]>('textDocument/codeAction', {
      textDocument: { uri },
      range: told()[0]!.range,
      context: { diagnostics: [], only: ['quickfix'] },
    });
    const fix = actions.find(({ title }) => title === 'Run at 76,800 bit/s');
    expect(fix?.edit.changes[uri]?.map(({ newText }) => newText)).toEqual([expect.stringContaining('76800')]);
    await change(bad.replace('115200', '76800'));
    await expect.poll(told, { timeout: 20_000 }).toEqual([]);
  } finally {
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}, 60_000);
