/**
 * What an earlier run wrote into a packet's folder and this one does not: a bus that has got another name must not leave
 * its old schedule where an installer may print it.
 *
 * A list in the folder says which files a run wrote, and their contents. Only what is on the list is ever removed, and
 * only while it still is what was written: what somebody has filled in or changed stays, and so does all that is not on
 * the list.
 */
import { createHash } from 'node:crypto';
import { lstatSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

export const listName = '.fieldpair-packet.json';

/** By path below the folder, with forward slashes: the SHA-256 of what was written. */
export type WrittenFiles = ReadonlyMap<string, string>;

export const contentHash = (content: string | Uint8Array): string => createHash('sha256').update(content).digest('hex');

/** A list that cannot be read is as good as none, and so is what no run writes: nothing is removed for its sake. */
export function readWritten(folder: string): WrittenFiles {
  try {
    const { files } = JSON.parse(readFileSync(join(folder, listName), 'utf8')) as { files?: unknown };
    if (typeof files !== 'object' || files === null) return new Map();
    return new Map(
      Object.entries(files).filter(
        (entry): entry is [string, string] => isOurs(entry[0]) && typeof entry[1] === 'string',
      ),
    );
  } catch {
    return new Map();
  }
}

/** The same files give the same list. */
export function writeWritten(folder: string, files: WrittenFiles): void {
  const sorted = [...files].sort(([one], [other]) => (one < other ? -1 : 1));
  const text = JSON.stringify({ about: 'What fieldpair wrote here last', files: Object.fromEntries(sorted) }, null, 1);
  writeFileSync(join(folder, listName), `${text}\n`);
}

/** Removes those of the files that still are what was written; gives the paths of those that are there and are not. */
export function removeUnchanged(folder: string, files: WrittenFiles): string[] {
  const kept: string[] = [];
  for (const [path, hash] of files) {
    const file = join(folder, ...path.split('/'));
    if (!isPlainFile(folder, file)) continue;
    if (contentHash(readFileSync(file)) === hash) rmSync(file);
    else kept.push(path);
  }
  return kept;
}

/** As `safeName` makes them, at most one folder down. */
const isOurs = (path: string) =>
  /^(?:(?:tables|diagrams)\/)?[\p{L}\p{M}\p{N}_-]+\.(?:html|pdf|xlsx|csv|svg)$/u.test(path);

/** Not a link, and not reached by one. */
function isPlainFile(folder: string, file: string): boolean {
  try {
    const isBelow = [folder, join(folder, 'tables'), join(folder, 'diagrams')].includes(dirname(file));
    const straight = join(realpathSync(folder), dirname(file).slice(folder.length)) === realpathSync(dirname(file));
    return isBelow && straight && lstatSync(file).isFile();
  } catch {
    return false;
  }
}
