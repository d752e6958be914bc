/** The one door through which rule tests reach the machinery: text in, findings out. */
import type { Finding } from '@fieldpair/shared';
import { type FileHost, Project } from '../workspace/project.js';

/** Files by name; imports are looked up by the name written. */
export function hostOf(files: Readonly<Record<string, string>>): FileHost {
  return {
    resolve: (_, path) => path,
    read: (file) => {
      const text = files[file];
      return text === undefined ? { problem: 'it does not exist', missing: true } : { text };
    },
  };
}

/** A project of some files, all of them its members. */
export function projectOf(files: Readonly<Record<string, string>>): Project {
  const project = new Project(hostOf(files));
  for (const file of Object.keys(files)) project.add(file);
  return project;
}

/** All findings of one text, or those of some rules. */
export function checkText(text: string, only?: readonly string[]): Finding[] {
  const { findings } = projectOf({ 'test.pair': text }).check();
  return findings.filter(({ rule, waived }) => !waived && (!only || only.includes(rule)));
}
