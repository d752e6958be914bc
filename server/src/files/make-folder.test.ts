import { existsSync, mkdtempSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { makeFolder } from './make-folder.js';

const place = mkdtempSync(join(tmpdir(), 'folders-'));

it('makes all that is missing on the way, and leaves what is there', () => {
  for (let round = 0; round < 2; round++) {
    makeFolder(join(place, 'a', 'b', 'c'));
    expect(statSync(join(place, 'a', 'b', 'c')).isDirectory()).toBe(true);
  }
});

it('says what is in the way', () => {
  writeFileSync(join(place, 'file'), '');
  expect(() => makeFolder(join(place, 'file', 'below'))).toThrow(/ENOTDIR/);
  expect(() => makeFolder(join(place, 'file'))).toThrow(/EEXIST/);
});

it('comes to an end where a file system takes no folders', () => {
  // A machine without such a file system takes none below a file either.
  const file = join(place, 'other file');
  writeFileSync(file, '');
  const hopeless = existsSync('/proc/self') ? '/proc/packets' : file;
  expect(() => makeFolder(join(hopeless, 'lark'))).toThrow(/ENOENT|ENOTDIR/);
});
