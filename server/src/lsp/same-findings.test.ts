/** The editor and the terminal say the same of the samples: the server over stdio against `fieldpair check`. */
import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { runCommandLine } from '../cli/program.js';
import { startServer } from './testing/start-server.js';

type Told = readonly {
  readonly code: string;
  readonly message: string;
  readonly codeDescription: { readonly href: string };
  readonly range: { readonly start: { readonly line: number; readonly character: number } };
}[];

async function toldByServer(folder: string): Promise<string[]> {
  const server = await startServer({ folder, initializationOptions: { rulePages: 'file:///pages/' } });
  try {
    await server.client.sendRequest('fieldpair/checkWorkspace');
    const published = [...server.published] as readonly (readonly [string, Told])[];
    for (const { code, codeDescription } of published.flatMap(([, diagnostics]) => diagnostics)) {
      expect(codeDescription.href).toBe(`file:///pages/${code}.md`);
    }
    return published.flatMap(([uri, diagnostics]) =>
      diagnostics.map(
        ({ code, message, range: { start } }) =>
          `${fileURLToPath(uri).slice(folder.length + 1)}:${start.line + 1}:${start.character + 1} ${code} ${message}`,
      ),
    );
  } finally {
    await server.stop();
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
