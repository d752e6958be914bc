import { symlinkSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sandbox } from '../cli/testing/sandbox.js';
import { pairFiles, shownPath } from './pair-files.js';

const names = (paths: string[], folder: string) => pairFiles(paths, folder).map((file) => shownPath(file, folder));

describe('pairFiles', () => {
  const tree = {
    'b/y.pair': '',
    'b/c/z.pair': '',
    'a.pair': '',
    'b/notes.txt': '',
    'b/node_modules/n.pair': '',
    '.git/g.pair': '',
  };

  it('searches folders all the way down, in the order of names', () => {
    expect(names(['.'], sandbox(tree).folder)).toEqual(['a.pair', 'b/c/z.pair', 'b/y.pair']);
  });

  it('takes each file once, and files that are named whatever they are called', () => {
    expect(names(['b', 'b/y.pair', 'b/notes.txt', './b/c'], sandbox(tree).folder)).toEqual([
      'b/c/z.pair',
      'b/notes.txt',
      'b/y.pair',
    ]);
  });

  it('searches a folder that is named although it would be passed over', () => {
    expect(names(['.git'], sandbox(tree).folder)).toEqual(['.git/g.pair']);
  });

  it('follows links to files and not to folders', () => {
    const { folder } = sandbox(tree);
    symlinkSync(join(folder, 'a.pair'), join(folder, 'b', 'link.pair'));
    symlinkSync(join(folder, 'b'), join(folder, 'b', 'round.pair'));
    expect(names(['b'], folder)).toEqual(['b/c/z.pair', 'b/link.pair', 'b/y.pair']);
  });

  it('refuses what is not there, and folders with nothing to read', () => {
    const { folder } = sandbox(tree);
    expect(() => pairFiles([''], folder)).toThrow('one of the paths is empty');
    expect(() => pairFiles(['none'], folder)).toThrow('cannot read none: there is no such file or folder');
    expect(() =>
      pairFiles(['a.pair', 'b/node_modules/..', 'empty'], sandbox({ 'empty/x.txt': '', 'a.pair': '' }).folder),
    ).toThrow('cannot read b/node_modules/..: there is no such file or folder');
    expect(() => pairFiles(['empty'], sandbox({ 'empty/x.txt': '' }).folder)).toThrow(
      'there are no .pair files in empty',
    );
  });
});

describe('shownPath', () => {
  it('is the way from the working folder to any path', () => {
    const part = fc.constantFrom('a', 'ab', 'b', 'c d');
    const path = fc.array(part, { maxLength: 4 }).map((parts) => resolve('/', ...parts));
    fc.assert(
      fc.property(path, path, (file, workingFolder) => {
        expect(shownPath(file, workingFolder)).toBe(relative(workingFolder, file).split(sep).join('/'));
      }),
    );
  });
});
