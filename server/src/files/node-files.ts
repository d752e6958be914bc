/** Reading `.pair` files from the file system of this machine. */
import { readFileSync, type Stats, statSync } from 'node:fs';
import { resolve, sep } from 'node:path';
import type { FileHost } from '@fieldpair/language';

/** Either the text of a file or, as a clause that can follow `cannot read FILE: `, why there is none. */
export type ReadResult = ReturnType<FileHost['read']>;

/**
 * Files by absolute path. A path in a text counts from the folder of the file that names it, and a backslash in it is
 * a separator on every system, so that one text means the same files everywhere.
 */
export class NodeFiles implements FileHost {
  readonly #regular: ReadonlySet<string>;
  #last = { folder: '', path: '', target: '' };

  /** @param regular files that were just seen to be regular ones, so that reading need not ask the system again. */
  constructor(regular: Iterable<string> = []) {
    this.#regular = new Set(regular);
  }

  resolve(from: string, path: string): string {
    const folder = from.slice(0, from.lastIndexOf(sep) + 1);
    // Files of a fleet import the same few.
    if (folder !== this.#last.folder || path !== this.#last.path) {
      this.#last = { folder, path, target: resolve(folder, path.replaceAll('\\', '/')) };
    }
    return this.#last.target;
  }

  read(file: string): ReadResult {
    return readText(file, { isRegular: this.#regular.has(file) });
  }
}

/**
 * Reads UTF-8 text. A byte order mark at the start does not count as text, as in editors; whoever writes the text back
 * asks for it.
 */
export function readText(file: string, { keepMark = false, isRegular = false } = {}): ReadResult {
  try {
    const problem = isRegular ? undefined : irregularity(statSync(file));
    if (problem !== undefined) return { problem };
    const text = readFileSync(file, 'utf8');
    // Node puts this where the bytes are no UTF-8; whether the file has it of its own, a strict reading tells.
    if (text.includes(replacement)) new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(file));
    return { text: keepMark || !text.startsWith(byteOrderMark) ? text : text.slice(1) };
  } catch (error) {
    return { problem: fileProblem(error), missing: errorCode(error) === 'ENOENT' };
  }
}

const replacement = '\uFFFD';
const byteOrderMark = '\uFEFF';

/** What a path leads to that is no regular file, as a clause. Opening a pipe or a device could wait for ever. */
export function irregularity(status: Stats): string | undefined {
  if (status.isFile()) return undefined;
  return status.isDirectory() ? 'it is a folder' : 'it is not a regular file';
}

const problems: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  ENOTDIR: 'a part of its path is not a folder',
  EACCES: 'no permission',
  EPERM: 'no permission',
  EROFS: 'its disk can only be read',
  ENOSPC: 'its disk is full',
  EISDIR: 'it is a folder',
  EEXIST: 'there is a file of that name',
  ELOOP: 'its symbolic links lead round in a circle',
  ENAMETOOLONG: 'its name is too long',
  EMFILE: 'too many files are open',
  ERR_ENCODING_INVALID_ENCODED_DATA: 'it is not UTF-8 text; save it as UTF-8',
  ERR_STRING_TOO_LONG: 'it is too large to be a text',
  ERR_FS_FILE_TOO_LARGE: 'it is too large to be a text',
  ERR_INVALID_ARG_VALUE: 'its path is not one that a file can have',
};

/** What stopped the file system, in words. */
export function fileProblem(error: unknown): string {
  const code = errorCode(error);
  return problems[code] ?? (code || 'the file system gave no reason');
}

export const errorCode = (error: unknown): string =>
  error instanceof Error && 'code' in error ? String(error.code) : '';
