/** What git itself says, in repositories that git itself has made, is what has to be read. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { gitRevision } from './git-revision.js';

function folder(): string {
  const path = realpathSync(mkdtempSync(join(tmpdir(), 'fieldpair-git-')));
  onTestFinished(() => rmSync(path, { recursive: true, force: true }));
  return path;
}

const settings = {
  ...process.env,
  GIT_CONFIG_GLOBAL: '/dev/null',
  GIT_CONFIG_NOSYSTEM: '1',
  GIT_AUTHOR_NAME: 'a',
  GIT_AUTHOR_EMAIL: 'a@example.org',
  GIT_COMMITTER_NAME: 'a',
  GIT_COMMITTER_EMAIL: 'a@example.org',
};
const git = (path: string, ...args: string[]) =>
  execFileSync('git', args, { cwd: path, env: settings, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] }).trim();

function repository(): { path: string; file: string; commit: () => string } {
  const path = folder();
  git(path, 'init', '--quiet', '--initial-branch', 'main');
  const file = join(path, 'stores', 'a.pair');
  mkdirSync(join(path, 'stores'));
  writeFileSync(file, 'store a {\n}\n');
  const commit = () => {
    git(path, 'add', '.');
    git(path, 'commit', '--quiet', '--allow-empty', '-m', 'x');
    return git(path, 'rev-parse', 'HEAD').slice(0, 10);
  };
  return { path, file, commit };
}

describe('the revision of a file', () => {
  it('is that of the commit, on a branch, packed, detached and in a worktree', () => {
    const { path, file, commit } = repository();
    expect(gitRevision([file])).toBeUndefined();
    const first = commit();
    expect(gitRevision([file])).toBe(first);
    git(path, 'pack-refs', '--all');
    expect(gitRevision([file])).toBe(first);
    const second = commit();
    expect(gitRevision([file])).toBe(second);
    const other = join(folder(), 'tree');
    git(path, 'worktree', 'add', '--quiet', '-b', 'side', other, first);
    expect(gitRevision([join(other, 'stores', 'a.pair')])).toBe(first);
    git(path, 'checkout', '--quiet', '--detach', first);
    expect(gitRevision([file])).toBe(first);
  });

  it.each(['2', '3', '4'])('says when a file is not what is staged, by an index of version %s', (version) => {
    const { path, file, commit } = repository();
    for (const name of ['stores/b.pair', 'stores/bb.pair', 'z']) writeFileSync(join(path, name), name);
    const revision = commit();
    git(path, 'update-index', '--index-version', version);
    const others = ['stores/b.pair', 'stores/bb.pair', 'z'].map((name) => join(path, name));
    expect(gitRevision([file, ...others])).toBe(revision);
    writeFileSync(file, 'store a {\n  // changed\n}\n');
    expect(gitRevision([file])).toBe(`${revision}-modified`);
    expect(gitRevision(others)).toBe(revision);
    const untracked = join(path, 'new.pair');
    writeFileSync(untracked, '');
    expect(gitRevision([untracked])).toBe(`${revision}-modified`);
  });

  it('takes other line ends for no change', () => {
    const { file, commit } = repository();
    const revision = commit();
    writeFileSync(file, 'store a {\r\n}\r\n');
    expect(gitRevision([file])).toBe(revision);
  });

  it('is nothing outside of a repository, and in one that is broken', () => {
    const path = folder();
    const file = join(path, 'a.pair');
    writeFileSync(file, '');
    expect(gitRevision([file])).toBeUndefined();
    expect(gitRevision([])).toBeUndefined();
    mkdirSync(join(path, '.git'));
    for (const head of [
      '',
      'ref: refs/heads/../../../etc/passwd',
      'ref: HEAD',
      'x'.repeat(40),
      'ref: refs/heads/none',
    ]) {
      writeFileSync(join(path, '.git', 'HEAD'), head);
      expect(gitRevision([file])).toBeUndefined();
    }
    const commit = '0123456789'.repeat(4);
    writeFileSync(join(path, '.git', 'HEAD'), commit);
    for (const index of ['', 'DIRC', 'DIRC\0\0\0\u0002\0\0\u00ff\u00ff']) {
      writeFileSync(join(path, '.git', 'index'), index, 'latin1');
      expect(gitRevision([file])).toBe('0123456789');
    }
  });
});
