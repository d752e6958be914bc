/** The editor and the terminal say the same of the samples: the server over stdio against `fieldpair check`. */
import { cpSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { marginLow } from '../../../shared/src/rules/load/margin-low.js';
import { runCommandLine } from '../cli/program.js';
import { startServer } from './testing/start-server.js';

type Told = readonly {
  readonly severity: number;
  readonly relatedInformation?: readonly { readonly message: string }[];
  readonly code: string;
  readonly message: string;
  readonly codeDescription: { readonly href: string };
  readonly range: { readonly start: { readonly line: number; readonly character: number } };
}[];

interface Line {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly rule: string;
  readonly severity: string;
  readonly message: string;
  readonly related?: readonly { readonly message: string }[];
}

const line = ({ file, line, column, rule, severity, message, related = [] }: Line): string =>
  `${file}:${line}:${column} ${severity} ${rule} ${message} (${related.map((one) => one.message).join('; ')})`;

async function toldByServer(folder: string): Promise<string[]> {
  const server = await startServer({ folder, initializationOptions: { rulePages: 'file:///pages/' } });
  try {
    await server.client.sendRequest('fieldpair/checkWorkspace');
    const published = [...server.published] as readonly (readonly [string, Told])[];
    for (const { code, codeDescription } of published.flatMap(([, diagnostics]) => diagnostics)) {
      expect(codeDescription.href).toBe(`file:///pages/${code}.md`);
    }
    return published.flatMap(([uri, diagnostics]) =>
      diagnostics.map(({ code, severity, message, relatedInformation = [], range: { start } }) =>
        line({
          file: fileURLToPath(uri).slice(folder.length + 1),
          ...{ line: start.line + 1, column: start.character + 1, rule: code, message },
          severity: ['', 'error', 'warning', 'info'][severity]!,
          related: relatedInformation,
        }),
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
    findings: Line[];
  };
  return findings.map(line);
}

it('the editor lists exactly the findings of the command line', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'fieldpair-same-'));
  const samples = fileURLToPath(new URL('../../../samples', import.meta.url));
  for (const name of readdirSync(samples)) cpSync(join(samples, name), join(folder, name), { recursive: true });
  // A bus whose finding takes a simulation, and one whose fault does.
  writeFileSync(join(folder, 'thin.pair'), marginLow.explanation.bad);
  try {
    const expected = (await toldByCommandLine(folder)).sort();
    expect(expected.length).toBeGreaterThan(12);
    expect(expected.filter((one) => one.includes(' margin-low simulated at '))).toHaveLength(1);
    expect(expected.filter((one) => one.includes('(simulated: ')).length).toBeGreaterThan(1);
    expect((await toldByServer(folder)).sort()).toEqual(expected);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
