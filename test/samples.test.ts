import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { formatText } from '../language/src/format/format.js';
import { type FileHost, Project } from '../language/src/workspace/project.js';

const root = fileURLToPath(new URL('../samples/', import.meta.url));

const samples: FileHost = {
  resolve: (from, path) => posix.join(posix.dirname(from), path),
  read: (file) => {
    try {
      return { text: readFileSync(root + file, 'utf8') };
    } catch (error) {
      return { problem: String(error) };
    }
  },
};

const files = readdirSync(root, { recursive: true, encoding: 'utf8' })
  .map((file) => file.replaceAll('\\', '/'))
  .filter((file) => file.endsWith('.pair'));

/** What is wrong in the files of one folder, notes apart. */
function faultsIn(folder: string): string[] {
  const project = new Project(samples);
  for (const file of files) if (file.startsWith(folder)) project.add(file);
  return project
    .check()
    .findings.filter(({ severity, waived }) => severity !== 'info' && !waived)
    .map(({ rule, message }) => `${rule}: ${message}`);
}

describe('the sample stores', () => {
  it('have a catalogue whose every entry some sample uses, or that is there for a reason', () => {
    const project = new Project(samples);
    for (const file of files) project.add(file);
    const unused = project.check().findings.filter(({ rule }) => rule === 'unused-entry');
    expect(unused.map(({ at }) => at).sort()).toEqual(['LineRepeater']);
  });

  it.each(files)('%s is written as the formatter writes', (file) => {
    const text = readFileSync(root + file, 'utf8');
    expect(formatText(text)).toBe(text);
  });

  it.each(['catalogue', 'small', 'full'])('%s has neither an error nor a warning', (folder) => {
    expect(faultsIn(folder)).toEqual([]);
  });
});
