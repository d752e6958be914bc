/** Folders made one by one. */
import { existsSync, mkdirSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { errorCode } from './node-files.js';

/**
 * Makes a folder and those above it that are missing; throws what the file system says where it cannot. Node's own
 * `recursive` tries for ever where a file system says of a folder that is there that the one below it has no place, as
 * /proc does.
 */
export function makeFolder(folder: string): void {
  if (isFolder(folder)) return;
  const missing = [resolve(folder)];
  for (let path = dirname(missing[0]!); !existsSync(path); path = dirname(path)) missing.push(path);
  for (const path of missing.reverse()) {
    try {
      mkdirSync(path);
    } catch (error) {
      // Another thread may have made it meanwhile.
      if (errorCode(error) !== 'EEXIST' || !isFolder(path)) throw error;
    }
  }
}

const isFolder = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;
