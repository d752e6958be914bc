/** The editor and the terminal say the same of the samples: the server over stdio against `fieldpair check`. */
import { spawn } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { expect, it } from 'vitest';
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-jsonrpc/node';
import { runCommandLine } from '../cli/program.js';

interface Told {
  readonly uri: string;
  readonly diagnostics: readonly {
    readonly code: string;
    readonly message: string;
    readonly codeDescription: { readonly href: string };
    readonly range: { readonly start: { readonly line: number; readonly character: number } };
  }[];
}

async function toldByServer(folder: string): Promise<string[]> {
  const bundle = join(folder, 'server.cjs');
  const entryPoint = fileURLToPath(new URL('../main.ts', import.meta.url));
  await build({
    entryPoints: [entryPoint],
    bundle: true,
    platform: 'node',
    format: 'cjs',
    outfile: bundle,
    logLevel: 'error',
  });
  const server = spawn(process.execPath, [bundle, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
  const client = createMessageConnection(new StreamMessageReader(server.stdout), new StreamMessageWriter(server.stdin));
  try {
    const published = new Map<string, Told['diagnostics']>();
    client.onNotification('textDocument/publishDiagnostics', ({ uri, diagnostics }: Told) => {
      published.set(uri, diagnostics);
    });
    client.onRequest('client/registerCapability', () => null);
    client.onRequest('workspace/configuration', () => [{}]);
    client.listen();
    await client.sendRequest('initialize', {
      processId: process.pid,
      rootUri: null,
      initializationOptions: { rulePages: 'file:///pages/' },
      capabilities: { workspace: { configuration: true, workspaceFolders: true } },
      workspaceFolders: [{ uri: pathToFileURL(folder).href, name: 'samples' }],
    });
    await client.sendNotification('initialized', {});
    await client.sendRequest('fieldpair/checkWorkspace');
    for (const { code, codeDescription } of [...published.values()].flat()) {
      expect(codeDescription.href).toBe(`file:///pages/${code}.md`);
    }
    return [...published].flatMap(([uri, diagnostics]) =>
      diagnostics.map(
        ({ code, message, range: { start } }) =>
          `${fileURLToPath(uri).slice(folder.length + 1)}:${start.line + 1}:${start.character + 1} ${code} ${message}`,
      ),
    );
  } finally {
    client.dispose();
    server.kill();
  }
}

async function toldByCommandLine(folder: string): Promise<string[]> {
  let out = '';
  const terminal = {
    workingFolder: folder,
    colour: false,
    out: (text: string) => (out += text),
    error: () => undefined,
  };
  await runCommandLine(['check', '.', '--format', 'json'], terminal as never);
  const { findings } = JSON.parse(out) as {
    findings: { file: string; line: number; column: number; rule: string; message: string }[];
  };
  return findings.map(({ file, line, column, rule, message }) => `${file}:${line}:${column} ${rule} ${message}`);
}

it('the editor lists exactly the findings of the command line', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'fieldpair-same-'));
  const samples = fileURLToPath(new URL('../../../samples', import.meta.url));
  for (const name of readdirSync(samples)) cpSync(join(samples, name), join(folder, name), { recursive: true });
  try {
    const expected = (await toldByCommandLine(folder)).sort();
    expect(expected.length).toBeGreaterThan(12);
    expect((await toldByServer(folder)).sort()).toEqual(expected);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
