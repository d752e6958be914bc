import { mkdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sandbox } from '../cli/testing/sandbox.js';
import { fileProblem, NodeFiles, readText } from './node-files.js';

describe('NodeFiles', () => {
  it('resolves a path from the folder of the file that names it', () => {
    const { folder } = sandbox();
    expect(new NodeFiles().resolve(join(folder, 'a', 'x.pair'), '../b/y.pair')).toBe(join(folder, 'b', 'y.pair'));
    expect(new NodeFiles().resolve(join(folder, 'a', 'x.pair'), '..\\b\\y.pair')).toBe(join(folder, 'b', 'y.pair'));
  });

  it('reads UTF-8 without its mark, or with it', () => {
    const file = sandbox().write('a.pair', '\uFEFFstore käse {\n}\n');
    expect(readText(file)).toEqual({ text: 'store käse {\n}\n' });
    expect(readText(file, { keepMark: true })).toEqual({ text: '\uFEFFstore käse {\n}\n' });
  });

  it("takes the replacement character where it is the file's own", () => {
    const file = sandbox().write('a.pair', '// \uFFFD\n');
    expect(readText(file)).toEqual({ text: '// \uFFFD\n' });
  });

  it('says what is in the way', () => {
    const { folder, write } = sandbox({ 'a.pair': '' });
    mkdirSync(join(folder, 'folder.pair'));
    symlinkSync('round.pair', join(folder, 'round.pair'));
    const problem = (file: string) => readText(join(folder, file));
    expect(problem('none.pair')).toEqual({ problem: 'there is no such file or folder', missing: true });
    expect(problem('a.pair/b.pair')).toMatchObject({ problem: 'a part of its path is not a folder' });
    expect(problem('folder.pair')).toEqual({ problem: 'it is a folder' });
    expect(problem('round.pair')).toMatchObject({ problem: 'its symbolic links lead round in a circle' });
    expect(readText('/dev/null')).toEqual({ problem: 'it is not a regular file' });
    expect(readText('a\0b')).toMatchObject({ problem: 'its path is not one that a file can have' });
    // "Käse" in ISO 8859-1.
    const latin = write('latin.pair', Uint8Array.of(0x4b, 0xe4, 0x73, 0x65));
    expect(readText(latin)).toMatchObject({ problem: 'it is not UTF-8 text; save it as UTF-8' });
  });

  it('has words for a file that may not be read', () => {
    expect(fileProblem(Object.assign(new Error('EACCES: …'), { code: 'EACCES' }))).toBe('no permission');
    expect(fileProblem(Object.assign(new Error('EIO: …'), { code: 'EIO' }))).toBe('EIO');
    expect(fileProblem('?')).toBe('the file system gave no reason');
  });
});
