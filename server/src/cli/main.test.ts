/** The program as a process of its own, bundled as the build does it: streams, statuses, and nothing left over. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { closeSync, existsSync, mkdtempSync, openSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { wholeCheck } from '@fieldpair/language';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-jsonrpc/node';
import { pairFiles } from '../files/pair-files.js';
import { checkWhole } from './check/check-whole.js';
import { sandbox } from './testing/sandbox.js';

let folder: string;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'fieldpair-program-'));
  await build({
    entryPoints: { cli: fileURLToPath(new URL('main.ts', import.meta.url)) },
    outdir: folder,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    splitting: true,
    platform: 'node',
    format: 'esm',
    logLevel: 'silent',
    loader: { '.ttf': 'binary' },
    banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);" },
  });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const start = (args: string[], cwd: string) =>
  spawn(process.execPath, [join(folder, 'cli.mjs'), ...args], { cwd, env: { ...process.env, NO_COLOR: '1' } });

async function finished(child: ChildProcess): Promise<{ status: number; out: string; error: string }> {
  let out = '';
  let error = '';
  child.stdout?.on('data', (chunk) => {
    out += chunk;
  });
  child.stderr?.on('data', (chunk) => {
    error += chunk;
  });
  const [status] = await once(child, 'close');
  return { status, out, error };
}

describe('the program', () => {
  it('prints all of a long report and ends with its status', async () => {
    const unknown = Array.from({ length: 3000 }, (_, index) => `  node n${index} : Missing\n`).join('');
    const { folder: stores } = sandbox({ 'x.pair': `store northgate {\n${unknown}}\n` });
    const { status, out, error } = await finished(start(['check', 'x.pair', '--format', 'json'], stores));
    expect({ status, error }).toEqual({ status: 1, error: '' });
    expect(JSON.parse(out).findings).toHaveLength(3000);
  });

  it('says what stopped it in one line', async () => {
    expect(await finished(start(['check', 'none.pair'], folder))).toEqual({
      status: 2,
      out: '',
      error: 'fieldpair: cannot read none.pair: there is no such file or folder\n',
    });
  });

  it('gives the same answer from several threads, and from kept answers', async () => {
    const store = (name: string) => `import "c.pair"\nstore ${name} {\n  node a : Board\n  node a : Board\n}\n`;
    const { folder: stores, write } = sandbox({ 'c.pair': 'device Board {\n}\ndevice Spare {\n}\n' });
    for (let index = 0; index < 20; index++) write(`s${index}.pair`, store(`s${index}`));
    write('s20.pair', 'import "s3.pair"\nstore s3 continued {\n  node a : Spare\n}\n');
    const check = (...args: string[]) => finished(start(['check', '.', '--format', 'json', ...args], stores));
    const alone = await check();
    // A name twice in each store and in what continues one, and a device that none uses.
    expect(JSON.parse(alone.out).findings).toHaveLength(22);
    expect(await check('--jobs', '3')).toEqual(alone);
    expect(await check('--jobs', '2', '--cache')).toEqual(alone);
    write('s7.pair', store('other'));
    const changed = await check();
    expect(changed).not.toEqual(alone);
    expect(await check('--jobs', '2', '--cache')).toEqual(changed);
    write('s9.pair', Uint8Array.of(0x4b, 0xe4));
    expect(await check('--jobs', '2')).toEqual({
      status: 2,
      out: '',
      error: 'fieldpair: cannot read s9.pair: it is not UTF-8 text; save it as UTF-8\n',
    });
  });

  it('gives the same answer where other threads come to help', async () => {
    const { folder: stores, write } = sandbox({ 'c.pair': 'device Board {\n}\ndevice Spare {\n}\n' });
    const store = (name: string) => `import "c.pair"\nstore ${name} {\n  node a : Board\n  node a : Board\n}\n`;
    for (let index = 0; index < 20; index++) write(`s${index}.pair`, store(`s${index}`));
    write('a.pair', 'import "s3.pair"\nstore s3 continued {\n  node a : Spare\n}\n');
    const files = pairFiles(['.'], stores);
    const settings = { only: undefined, workingFolder: stores };
    const check = async (leaving: number) => {
      const told: number[] = [];
      const program = pathToFileURL(join(folder, 'cli.mjs'));
      const help = { jobs: 2, isWanted: (left: number) => left <= leaving };
      const parts = await checkWhole(files, settings, program, (done) => told.push(done), help);
      const findings = wholeCheck(parts, {}).findings.map(({ fixes, ...finding }) => ({ ...finding, fixes: fixes() }));
      return { parts: parts.length, told: Math.max(...told), findings };
    };
    const alone = await check(0);
    expect(alone).toMatchObject({ parts: 1, told: files.length - 1 });
    expect(alone.findings).toHaveLength(22);
    for (const leaving of [files.length, 12, 1]) {
      const helped = await check(leaving);
      expect(helped.parts).toBeGreaterThan(1);
      expect(helped.told).toBe(files.length);
      expect(helped.findings).toEqual(alone.findings);
    }
  });

  it('ends with the status of the whole run when its reader has seen enough', async () => {
    const unknown = Array.from({ length: 3000 }, (_, index) => `  node n${index} : Missing\n`).join('');
    const { folder: stores } = sandbox({ 'x.pair': `store northgate {\n${unknown}}\n` });
    for (const [args, status] of [
      [['explain'], 0],
      [['check', 'x.pair'], 1],
      [['check', 'x.pair', '--watch'], 0],
    ] as const) {
      const child = start([...args], stores);
      child.stdout.destroy();
      expect(await finished(child)).toMatchObject({ status, error: '' });
    }
  });

  // Where the system has a device that is always full.
  for (const device of ['/dev/full'].filter((path) => existsSync(path))) {
    it('says that what it prints to is full', async () => {
      const full = openSync(device, 'w');
      const child = spawn(process.execPath, [join(folder, 'cli.mjs'), 'explain'], { stdio: ['ignore', full, 'pipe'] });
      expect(await finished(child)).toMatchObject({
        status: 2,
        error: 'fieldpair: cannot print any further: its disk is full\n',
      });
      closeSync(full);
    });
  }

  it('serves an editor on standard input and output', async () => {
    const child = start(['serve', '--stdio'], folder);
    const connection = createMessageConnection(
      new StreamMessageReader(child.stdout),
      new StreamMessageWriter(child.stdin),
    );
    connection.listen();
    const ended = once(child, 'exit');
    const answer = await connection.sendRequest('initialize', { processId: null, rootUri: null, capabilities: {} });
    expect(answer).toMatchObject({ capabilities: { hoverProvider: expect.anything() } });
    await connection.sendNotification('initialized', {});
    await connection.sendRequest('shutdown');
    await connection.sendNotification('exit');
    expect(await ended).toEqual([0, null]);
    connection.dispose();
  });

  it('asks how to serve', async () => {
    expect(await finished(start(['serve'], folder))).toEqual({
      status: 2,
      out: '',
      error: "fieldpair: required option '--stdio' not specified\n",
    });
  });
});
