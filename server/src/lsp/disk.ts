/** Files on disk, named by their URIs. */
import type { Dirent } from 'node:fs';
import { readdir } from 'node:fs/promises';
import type { FileHost } from '@fieldpair/language';
import { URI, UriUtils } from 'langium';
import { readText } from '../files/node-files.js';

/** Bounds of a search, for a workspace that is opened by mistake, such as a whole disk. */
const mostFiles = 50_000;
const mostFolders = 200_000;

/** The one spelling of a URI that names its file everywhere. */
export const fileOf = (uri: string): string => URI.parse(uri).toString();

export const disk: FileHost = {
  resolve(from, path) {
    try {
      const base = URI.parse(from);
      return UriUtils.resolvePath(UriUtils.dirname(base), path.replaceAll('\\', '/')).toString();
    } catch {
      // Some texts can be no part of a URI, and so name no file; reading one says so.
      return path;
    }
  },

  read(file) {
    return file.startsWith('file:') ? readText(URI.parse(file).fsPath) : { problem: 'it is not on disk' };
  },
};

/** All `.pair` files below some folders, in order; hidden folders and installed packages are left out. */
export async function findFiles(folders: readonly string[]): Promise<string[]> {
  const found = new Set<string>();
  const pending = folders.filter((folder) => folder.startsWith('file:')).map((folder) => URI.parse(folder).fsPath);
  let visited = 0;
  for (let folder = pending.pop(); folder !== undefined && visited < mostFolders; folder = pending.pop()) {
    visited++;
    for (const entry of await entriesOf(folder)) {
      const path = `${folder.replace(/[\\/]$/, '')}/${entry.name}`;
      if (entry.isDirectory() && !entry.name.startsWith('.') && entry.name !== 'node_modules') pending.push(path);
      else if (entry.isFile() && entry.name.endsWith('.pair') && found.size < mostFiles)
        found.add(URI.file(path).toString());
    }
  }
  return [...found].sort();
}

/** A folder that cannot be read has nothing in it for us. */
const entriesOf = (folder: string): Promise<Dirent[]> => readdir(folder, { withFileTypes: true }).catch(() => []);
