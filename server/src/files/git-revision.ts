/**
 * Which revision of a git repository files are of, read from the repository's own files: nothing is run, because what
 * git runs can be set by whoever wrote the repository.
 *
 * The layout is that of gitrepository-layout(5), the index that of gitformat-index(5).
 */
import { createHash } from 'node:crypto';
import { readFileSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { stagedHashes } from './git-index.js';

/** As many digits of a commit as people write; git itself shows seven or more. */
const shownDigits = 10;

/**
 * `3f2a91bc04`, with `-modified` when one of the files is certainly not what git has staged of it; undefined outside
 * of a repository, and before its first commit.
 *
 * @param files absolute paths of one repository
 */
export function gitRevision(files: readonly string[]): string | undefined {
  const [first] = files;
  const home = first === undefined ? undefined : repositoryOf(dirname(first));
  const commit = home && commitOf(home);
  if (!home || commit === undefined) return undefined;
  const staged = stagedHashes(join(home.own, 'index'));
  const modified = staged !== undefined && files.some((file) => isModified(home, staged, file));
  return `${commit.slice(0, shownDigits)}${modified ? '-modified' : ''}`;
}

interface Repository {
  /** Where the files are checked out. */
  readonly tree: string;
  /** The folder of this checkout's own state, and that of what all checkouts share. */
  readonly own: string;
  readonly shared: string;
}

function repositoryOf(folder: string): Repository | undefined {
  for (let tree = folder; ; tree = dirname(tree)) {
    const own = gitFolder(join(tree, '.git'));
    if (own !== undefined) {
      const common = textOf(join(own, 'commondir'))?.trim();
      return { tree, own, shared: common === undefined ? own : resolve(own, common) };
    }
    if (dirname(tree) === tree) return undefined;
  }
}

/** `.git` itself, or where it points in a worktree or a submodule. */
function gitFolder(path: string): string | undefined {
  try {
    if (statSync(path).isDirectory()) return path;
  } catch {
    return undefined;
  }
  const target = /^gitdir: (.+)$/m.exec(textOf(path) ?? '')?.[1];
  return target === undefined ? undefined : resolve(dirname(path), target.trim());
}

const hash = /^[0-9a-f]{40}(?:[0-9a-f]{24})?$/;
/** Names of references have no part that leads out of their folder. */
const reference = /^ref: (refs\/(?!.*\.\.)[^\0\s]+)$/;

function commitOf({ own, shared }: Repository): string | undefined {
  let name = 'HEAD';
  // A reference may name another one; more than a few steps would be a circle.
  for (let step = 0; step < 5; step++) {
    const text = textOf(join(own, name))?.trim() ?? textOf(join(shared, name))?.trim() ?? packed(shared, name);
    if (text === undefined) return undefined;
    if (hash.test(text)) return text;
    const [, next] = reference.exec(text) ?? [];
    if (next === undefined) return undefined;
    name = next;
  }
  return undefined;
}

function packed(shared: string, name: string): string | undefined {
  for (const line of (textOf(join(shared, 'packed-refs')) ?? '').split('\n')) {
    const [commit, packedName] = line.trim().split(' ');
    if (packedName === name) return commit;
  }
  return undefined;
}

function isModified({ tree }: Repository, staged: ReadonlyMap<string, string>, file: string): boolean {
  const known = staged.get(relative(tree, file).split(sep).join('/'));
  // What git never saw is certainly not of the revision.
  if (known === undefined) return true;
  // Hashes of repositories in the newer format are not compared: nothing certain is known then.
  if (known.length !== 40) return false;
  const bytes = bytesOf(file);
  if (!bytes) return false;
  // Git may keep lines ended by LF alone where the checkout has CR and LF.
  const plain = Buffer.from(bytes.toString('latin1').replaceAll('\r\n', '\n'), 'latin1');
  return blobHash(bytes) !== known && blobHash(plain) !== known;
}

const blobHash = (bytes: Buffer) => createHash('sha1').update(`blob ${bytes.length}\0`).update(bytes).digest('hex');

const textOf = (file: string): string | undefined => bytesOf(file)?.toString('utf8');

function bytesOf(file: string): Buffer | undefined {
  try {
    // Opening a pipe or a device could wait for ever.
    return statSync(file).isFile() ? readFileSync(file) : undefined;
  } catch {
    return undefined;
  }
}
