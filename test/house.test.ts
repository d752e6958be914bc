/** Promises about the repository as a whole that no single folder can keep alone. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
const read = (path: string) => readFileSync(`${root}${path}`, 'utf8');

/** What installing, building and running leave behind; none of it is tracked. */
const leftovers = new Set(['node_modules', 'dist', '.out', '.git']);

function filesUnder(folder: string): string[] {
  const files: string[] = [];
  for (const entry of readdirSync(`${root}${folder}`, { withFileTypes: true })) {
    const path = folder + entry.name;
    if (leftovers.has(entry.name)) continue;
    if (entry.isDirectory()) files.push(...filesUnder(`${path}/`));
    else files.push(path);
  }
  return files;
}

const files = filesUnder('');
const isGenerated = (path: string) => path.includes('/generated/') || path === 'package-lock.json';
const isSource = (path: string) => /\.([cm]?[jt]s|sh|langium)$|^\.ci\//.test(path) && !isGenerated(path);
const isText = (path: string) => !isGenerated(path) && !/\.(png|ico|woff2?)$/.test(path);

/** `path:line: text` of every line of the files that matches. */
function linesThatMatch(paths: readonly string[], pattern: RegExp): string[] {
  return paths.flatMap((path) =>
    read(path)
      .split('\n')
      .flatMap((line, index) => (pattern.test(line) ? [`${path}:${index + 1}: ${line.trim()}`] : [])),
  );
}

interface Manifest {
  readonly name?: string;
  readonly version?: string;
  readonly license?: string;
  readonly dependencies?: Record<string, string>;
  readonly devDependencies?: Record<string, string>;
  readonly optionalDependencies?: Record<string, string>;
}
const folders = ['', 'shared/', 'language/', 'server/', 'extension/'];
const manifests = folders.map((folder) => JSON.parse(read(`${folder}package.json`)) as Manifest);

interface Locked extends Manifest {
  readonly link?: boolean;
  readonly dev?: boolean;
  readonly resolved?: string;
  readonly integrity?: string;
}
const locked = (JSON.parse(read('package-lock.json')) as { packages: Record<string, Locked> }).packages;

test('the top level holds what a newcomer looks for, and nothing else', () => {
  const expected = [
    ...['README.md', 'DEVELOPERS.md', 'CHANGELOG.md', 'LICENSE', 'package.json', 'package-lock.json'],
    ...['shared', 'language', 'server', 'extension', 'samples', 'test'],
  ];
  const present = readdirSync(root).filter((name) => !name.startsWith('.') && !leftovers.has(name));
  expect(present.sort()).toEqual(expected.sort());
});

test('no test is skipped, singled out or put off', () => {
  const pattern = /\b(?:it|test|describe|suite|bench)(?:\.\w+)*\.(?:skip|only|todo|skipIf|runIf|fails)\b/;
  expect(linesThatMatch(files.filter(isSource), pattern)).toEqual([]);
});

test('nothing is marked to be done later', () => {
  expect(linesThatMatch(files.filter(isText), /\b(?:TO[D]O|FIX[M]E|X[X]X)\b/)).toEqual([]);
});

test('no file knows the machine it was written on', () => {
  const ownFolder = /(?:^|[\s'"`(=:])(?:\/(?:work|tmp|root|home|Users)\/|[A-Z]:\\+Users\\)/;
  expect(linesThatMatch(files.filter(isText), ownFolder)).toEqual([]);
});

test('the lock file ties nobody to one registry, and every package in it is proven by its hash', () => {
  const foreign = Object.entries(locked).filter(
    ([path, entry]) =>
      path.startsWith('node_modules/') &&
      !entry.link &&
      (entry.resolved !== undefined || entry.integrity === undefined),
  );
  expect(foreign.map(([path]) => path)).toEqual([]);
});

test('a source file can be read in one sitting: under 300 lines', () => {
  const lengths = files.filter(isSource).map((path) => ({ path, lines: read(path).split('\n').length - 1 }));
  expect(lengths.length).toBeGreaterThan(50);
  expect(lengths.filter(({ lines }) => 300 <= lines)).toEqual([]);
});

test('every package of the repository is under the MIT licence and of one version', () => {
  expect(read('LICENSE')).toMatch(/^MIT License/);
  expect(manifests.map((manifest) => manifest.license)).toEqual(folders.map(() => 'MIT'));
  expect(new Set(manifests.slice(1).map((manifest) => manifest.version)).size).toBe(1);
});

/** Whether an SPDX expression lets us choose a licence that asks for nothing but the notice. */
function isPermissive(licence: string | undefined): boolean {
  const permissive = new Set(['MIT', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', '0BSD', 'Apache-2.0']);
  const alternatives = (licence ?? '').replace(/[()]/g, '').split(' OR ');
  return alternatives.some((alternative) => permissive.has(alternative));
}

/**
 * Packages whose manifest names no SPDX expression, with the file that has their terms: MIT for the reader of PNG that
 * comes with the writer of PDF, and those of Bitstream Vera for the font, which ask for nothing but the notice and
 * another name for a changed font.
 */
const ownTerms: Readonly<Record<string, string>> = {
  'png-js': 'LICENSE',
  'dejavu-fonts-ttf': 'LICENSE',
};

test('what we depend on directly, and all that is bundled, has a permissive licence', () => {
  const direct = manifests.flatMap((manifest) =>
    Object.keys({ ...manifest.dependencies, ...manifest.devDependencies, ...manifest.optionalDependencies }),
  );
  const outside = direct.filter((name) => !locked[`node_modules/${name}`]?.link);
  const bundled = Object.entries(locked).filter(
    ([path, entry]) => path.includes('node_modules/') && !entry.link && !entry.dev,
  );
  const judged = new Map([
    ...outside.map((name) => [name, locked[`node_modules/${name}`]?.license] as const),
    ...bundled.map(([path, entry]) => [path, entry.license] as const),
  ]);
  expect(judged.size).toBeGreaterThan(20);
  const others = [...judged].filter(([, licence]) => !isPermissive(licence));
  const unread = others.filter(([path]) => !Object.hasOwn(ownTerms, path.replace(/^.*node_modules\//, '')));
  expect(unread).toEqual([]);
  for (const [name, file] of Object.entries(ownTerms)) {
    expect(read(`node_modules/${name}/${file}`)).toMatch(/Permission is hereby granted, free\s+of\s+charge/);
  }
});

test.each(['vscode-languageserver', 'vscode-languageserver-protocol', 'vscode-languageserver-types', 'vscode-jsonrpc'])(
  'there is exactly one %s, so that its types and message objects are the same everywhere',
  (name) => {
    const places = Object.keys(locked).filter((path) => path.endsWith(`node_modules/${name}`));
    expect(places).toEqual([`node_modules/${name}`]);
  },
);
