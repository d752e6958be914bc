import { existsSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { sandbox } from '../cli/testing/sandbox.js';
import { contentHash, listName, readWritten, removeUnchanged, writeWritten } from './leftovers.js';

const folderWith = (files: Readonly<Record<string, string>>): string => {
  const { folder } = sandbox(files);
  mkdirSync(join(folder, 'packet'), { recursive: true });
  return folder;
};

it('removes what still is as it was written, and names what is not', () => {
  const folder = join(folderWith({ 'packet/tables/a.csv': 'a', 'packet/b.pdf': 'filled in' }), 'packet');
  const files = new Map([
    ['tables/a.csv', contentHash('a')],
    ['b.pdf', contentHash('b')],
    ['c.html', contentHash('c')],
  ]);
  writeWritten(folder, files);
  expect(readWritten(folder)).toEqual(files);
  expect(removeUnchanged(folder, files)).toEqual(['b.pdf']);
  expect(existsSync(join(folder, 'tables/a.csv'))).toBe(false);
  expect(readFileSync(join(folder, 'b.pdf'), 'utf8')).toBe('filled in');
});

it.each([
  '../outside.csv',
  '/outside.csv',
  'tables/../../outside.csv',
  'tables/../a.csv',
  'a.pair',
  '.hidden.csv',
  'deep/tables/a.csv',
  'C:a.csv',
  'tables\\a.csv',
])('takes no notice of %s on a list', (path) => {
  const folder = join(folderWith({ 'outside.csv': 'x', 'packet/a.csv': 'x', 'packet/a.pair': 'x' }), 'packet');
  writeFileSync(join(folder, listName), JSON.stringify({ files: { [path]: contentHash('x') } }));
  expect(readWritten(folder)).toEqual(new Map());
});

it.each(['', 'null', '[]', '{"files":7}', '{"files":{"a.csv":3}}', '{'])('takes %s for no list', (text) => {
  const folder = folderWith({ [`packet/${listName}`]: text });
  expect(readWritten(join(folder, 'packet'))).toEqual(new Map());
});

it('follows no link out of the folder', () => {
  const root = folderWith({ 'mine.csv': 'x' });
  const folder = join(root, 'packet');
  symlinkSync(root, join(folder, 'diagrams'));
  symlinkSync(join(root, 'mine.csv'), join(folder, 'link.csv'));
  const hash = contentHash('x');
  removeUnchanged(
    folder,
    new Map([
      ['diagrams/mine.csv', hash],
      ['link.csv', hash],
    ]),
  );
  expect(existsSync(join(root, 'mine.csv'))).toBe(true);
  expect(existsSync(join(folder, 'link.csv'))).toBe(true);
});
