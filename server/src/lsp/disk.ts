/** Files on disk, named by their URIs. */
import { type Dirent, readFileSync, statSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { FileHost } from '@fieldpair/language';
import { URI, UriUtils } from 'langium';

/** Larger files are no wiring descriptions. In bytes. */
const largestFile = 16 * 1024 * 1024;
/** Bounds of a search, for a workspace that is opened by mistake, such as a whole disk. */
const mostFiles = 50_000;
const mostFolders = 200_000;

/** The one spelling of a URI that names its file everywhere. */
export const fileOf = (uri: string): string => URI.parse(uri).toString();

export const disk: FileHost = {
  resolve(from, path) {
    const base = URI.parse(from);
    if (base.scheme !== 'file') return base.with({ path: `${UriUtils.dirname(base).path}/${path}` }).toString();
    return UriUtils.resolvePath(UriUtils.dirname(base), path.replaceAll('\\', '/')).toString();
  },

  read(file) {
    if (!file.startsWith('file:')) return { problem: 'it is not on disk' };
    try {
      const path = fileURLToPath(file);
      const status = statSync(path);
      if (status.isDirectory()) return { problem: 'it is a folder' };
      if (!status.isFile()) return { problem: 'it is no file' };
      if (status.size > largestFile) return { problem: `it is larger than ${largestFile / 1024 / 1024} MB` };
      return { text: new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(path)) };
    } catch (error) {
      return problemOf(error);
    }
  },
};

function problemOf(error: unknown): { problem: string; missing?: boolean } {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  switch (code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return { problem: 'it does not exist', missing: true };
    case 'EACCES':
    case 'EPERM':
      return { problem: 'there is no permission to read it' };
    case 'ERR_ENCODING_INVALID_ENCODED_DATA':
      return { problem: 'it is no text in UTF-8' };
    default:
      return { problem: `it cannot be read (${String(code ?? error)})` };
  }
}

/** All `.pair` files below some folders, in order; hidden folders and installed packages are left out. */
export async function findFiles(folders: readonly string[]): Promise<string[]> {
  const found = new Set<string>();
  const pending = folders.filter((folder) => folder.startsWith('file:')).map((folder) => fileURLToPath(folder));
  let visited = 0;
  for (let folder = pending.pop(); folder !== undefined && visited < mostFolders; folder = pending.pop()) {
    visited++;
    for (const entry of await entriesOf(folder)) {
      const path = `${folder.replace(/[\\/]$/, '')}/${entry.name}`;
      if (entry.isDirectory() && !entry.name.startsWith('.') && entry.name !== 'node_modules') pending.push(path);
      else if (entry.isFile() && entry.name.endsWith('.pair') && found.size < mostFiles) found.add(fileOf(pathToFileURL(path).href));
    }
  }
  return [...found].sort();
}

/** A folder that cannot be read has nothing in it for us. */
const entriesOf = (folder: string): Promise<Dirent[]> => readdir(folder, { withFileTypes: true }).catch(() => []);
