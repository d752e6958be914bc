import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sandbox } from '../testing/sandbox.js';

const untidy = '\uFEFFstore  northgate {\r\nnode head:DriveBoard\r\n}\r\n';
const tidy = '\uFEFFstore northgate {\r\n  node head : DriveBoard\r\n}\r\n';

describe('fieldpair format', () => {
  it('lays out what is not laid out, and touches nothing else', async () => {
    const { folder, run } = sandbox({ 'a.pair': untidy, 'b.pair': tidy });
    const before = statSync(join(folder, 'b.pair')).mtimeMs;
    expect(await run('format', '.')).toEqual({ status: 0, out: 'a.pair\n1 of 2 files changed.\n', error: '' });
    expect(readFileSync(join(folder, 'a.pair'), 'utf8')).toBe(tidy);
    expect(statSync(join(folder, 'b.pair')).mtimeMs).toBe(before);
    expect(await run('format', '.')).toMatchObject({ out: '0 of 2 files changed.\n' });
  });

  it('only says so when asked to check', async () => {
    const { folder, run } = sandbox({ 'a.pair': untidy, 'b.pair': tidy });
    expect(await run('format', '--check', '.')).toEqual({
      status: 1,
      out: 'a.pair\n1 of 2 files would change.\n',
      error: '',
    });
    expect(readFileSync(join(folder, 'a.pair'), 'utf8')).toBe(untidy);
    expect(await run('format', '--check', 'b.pair')).toMatchObject({ status: 0 });
  });

  it('ends with 2 for a file that cannot be read', async () => {
    expect(await sandbox().run('format', 'none.pair')).toEqual({
      status: 2,
      out: '',
      error: 'fieldpair: cannot read none.pair: there is no such file or folder\n',
    });
  });
});
