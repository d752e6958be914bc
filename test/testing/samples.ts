/** The sample stores as texts, and projects of them or of texts that stand in for them. */
import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { CheckSettings } from '@fieldpair/shared';
import { type FileHost, Project } from '../../language/src/workspace/project.js';

const folder = fileURLToPath(new URL('../../samples/', import.meta.url));

/** By their paths below the samples' folder, with forward slashes. */
export const sampleTexts: ReadonlyMap<string, string> = new Map(
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.pair'))
    .map((path) => [path.replaceAll('\\', '/'), readFileSync(folder + path, 'utf8')]),
);

export const hostOf = (texts: ReadonlyMap<string, string>): FileHost => ({
  resolve: (from, path) => posix.join(posix.dirname(from), path),
  read: (file) => {
    const text = texts.get(file);
    return text === undefined ? { problem: 'it does not exist', missing: true } : { text };
  },
});

/** A project of texts, with some of them, or all, as its members. */
export function projectOf(
  texts: ReadonlyMap<string, string>,
  members: Iterable<string> = texts.keys(),
  settings: CheckSettings = {},
): Project {
  const project = new Project(hostOf(texts), settings);
  for (const file of members) project.add(file);
  return project;
}

/** The same without the signals that rules have simulated: that takes longer than all else where many texts are checked. */
export const unsimulatedProjectOf = (texts: ReadonlyMap<string, string>, members: Iterable<string> = texts.keys()) =>
  projectOf(texts, members, { signal: () => ({ unknown: 'the signal' }) });
