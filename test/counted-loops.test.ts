/** Loops that a bundle counts do what those of the source do, and only arrays are counted. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import ts from 'typescript';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { countedLoops } from '../.config/counted-loops.mjs';

const loops: Readonly<Record<string, string>> = {
  'an array': 'for (const one of list) { said.push(one); }',
  'without braces': 'for (const one of list) said.push(one);',
  'one in another, both without braces': 'for (const one of list) for (const other of list) said.push(one * other);',
  'one in another, with braces': 'for (const one of list) { for (const other of list) { said.push(one, other); } }',
  'that takes its elements apart': 'for (const [index, { value }] of pairs) said.push(index, value);',
  'that is left and gone on with':
    'for (const one of list) { if (one === 2) continue; if (one === 4) break; said.push(one); }',
  'with a label':
    'outer: for (const one of list) for (const other of list) { if (other > one) continue outer; said.push(other); }',
  'whose rounds are remembered':
    'const later = []; for (const one of list) later.push(() => one); for (const call of later) said.push(call());',
  'of an array that grows':
    'const open = [3]; for (const one of open) { said.push(one); if (one > 0) open.push(one - 1); }',
  'into a variable that is there already': 'let one = 0; for (one of list) said.push(one); said.push(one);',
  'of a tuple': 'for (const one of [1, "a"] as const) said.push(one);',
  'of one of two arrays': 'for (const one of list.length > 2 ? list : pairs) said.push(String(one));',
  'of what a call gives, once':
    'let calls = 0; const give = () => { calls++; return list; }; for (const one of give()) said.push(one); said.push(calls);',
};
const others: Readonly<Record<string, string>> = {
  'a set that grows':
    'const seen = new Set([1]); for (const one of seen) { said.push(one); if (one < 4) seen.add(one + 1); }',
  'a map': 'for (const [key, value] of new Map([[1, 2]])) said.push(key, value);',
  'a text, by its characters': 'for (const one of "a𝄞b") said.push(one);',
  'a generator': 'function* some() { yield 1; yield 2; } for (const one of some()) said.push(one);',
  'what may be an array or a set':
    'const mixed = list.length > 9 ? list : new Set(list); for (const one of mixed) said.push(one);',
};

const folder = mkdtempSync(join(tmpdir(), 'fieldpair-loops-'));
const program = (loop: string) => `export function run(said: unknown[]) {
  const list: readonly number[] = [1, 2, 3, 4, 5];
  const pairs: [number, { value: string }][] = [[1, { value: 'a' }], [2, { value: 'b' }]];
  void list; void pairs;
  ${loop}
}
`;
const all = Object.entries({ ...loops, ...others });
let counted: (path: string) => string | undefined;
const pathOf = (name: string) => join(folder, `${all.findIndex(([one]) => one === name)}.ts`);

beforeAll(() => {
  for (const [name, loop] of all) writeFileSync(pathOf(name), program(loop));
  writeFileSync(
    join(folder, 'tsconfig.json'),
    JSON.stringify({
      compilerOptions: { target: 'ES2023', lib: ['ES2023'], strict: true, types: [] },
      include: ['*.ts'],
    }),
  );
  counted = countedLoops(join(folder, 'tsconfig.json'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function said(text: string): unknown[] {
  const { outputText } = ts.transpileModule(text, {
    compilerOptions: { module: ts.ModuleKind.CommonJS, target: ts.ScriptTarget.ES2023 },
  });
  const exported: { run?: (said: unknown[]) => void } = {};
  new Function('exports', outputText)(exported);
  const found: unknown[] = [];
  exported.run?.(found);
  return found;
}

describe('a counted loop does the same', () => {
  it.each(Object.entries(loops))('%s', (name, loop) => {
    const text = counted(pathOf(name)) ?? '';
    expect(text).not.toMatch(/for \([^;)]* of /);
    expect(said(text)).toEqual(said(program(loop)));
    expect(said(text).length).toBeGreaterThan(0);
    expect(text.split('\n').length).toBe(program(loop).split('\n').length);
  });
});

describe('left as it is', () => {
  it.each(Object.keys(others))('%s', (name) => {
    expect(counted(pathOf(name))).toBeUndefined();
  });
});
