/** The loader of bundles that keeps compiled code: what it runs is always the bundle, whatever lies in its folder. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, it } from 'vitest';

const loader = fileURLToPath(new URL('../server/bin/compiled.js', import.meta.url));
let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fieldpair-compiled-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Runs a bundle that prints what it is given, under the identity `id`. */
function run(id: string, printed: string, settings: NodeJS.ProcessEnv = {}, node: readonly string[] = []) {
  const bundle = join(folder, 'bundle.cjs');
  writeFileSync(
    bundle,
    `/* ${id} */\nfunction tell() { return '${printed}'; }\nconsole.log(tell(), typeof require);\n`,
  );
  const program = `require(${JSON.stringify(loader)}).load(${JSON.stringify(bundle)}, 'check')`;
  const { NODE_DISABLE_COMPILE_CACHE: _, ...inherited } = process.env;
  const env = { ...inherited, NODE_COMPILE_CACHE: join(folder, 'cache'), ...settings };
  const { stdout, stderr } = spawnSync(process.execPath, [...node, '-e', program], { encoding: 'utf8', env });
  expect(stderr).toBe('');
  return stdout.trim();
}

/** The files with code that was kept. */
const kept = () =>
  readdirSync(join(folder, 'cache'), { recursive: true, encoding: 'utf8' })
    .filter((path) => basename(path).startsWith('fieldpair-check-'))
    .map((path) => join(folder, 'cache', path));

it('runs a bundle with the code that was kept of it, and another of the same length with its own', () => {
  expect(run('one', 'abc')).toBe('abc function');
  expect(kept()).toHaveLength(1);
  const before = readFileSync(kept()[0]!);
  expect(run('one', 'abc')).toBe('abc function');
  expect(readFileSync(kept()[0]!).equals(before)).toBe(true);
  expect(run('two', 'xyz')).toBe('xyz function');
  expect(run('two', 'xyz')).toBe('xyz function');
  expect(readFileSync(kept()[0]!).equals(before)).toBe(false);
});

it('keeps code for other settings of V8 apart', () => {
  run('one', 'abc');
  expect(run('one', 'abc', {}, ['--no-opt'])).toBe('abc function');
  expect(kept()).toHaveLength(2);
});

it('takes no harm from anything else in its place', () => {
  run('one', 'abc');
  const file = kept()[0]!;
  for (const content of ['', '/* one */', `/* one */${'x'.repeat(500)}`]) {
    writeFileSync(file, content);
    expect(run('one', 'abc')).toBe('abc function');
  }
  rmSync(join(folder, 'cache'), { recursive: true });
  writeFileSync(join(folder, 'cache'), 'no folder');
  expect(run('one', 'abc')).toBe('abc function');
});

it('keeps nothing where Node is told to keep nothing', () => {
  expect(run('one', 'abc', { NODE_DISABLE_COMPILE_CACHE: '1' })).toBe('abc function');
  expect(readdirSync(folder)).toEqual(['bundle.cjs']);
});
