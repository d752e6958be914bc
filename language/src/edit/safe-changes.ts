/** The fixes that may be applied without asking, as one set of changes that do not touch each other. */
import type { Finding, Fix } from '@fieldpair/shared';
import type { Project } from '../workspace/project.js';
import type { TextChange } from './text-change.js';
import { textChangesFor } from './text-changes.js';

/** The changes of one fix of a finding in `file`. */
export function changesOfFix(project: Project, file: string, finding: Finding, { edits }: Fix): TextChange[] {
  const store = project.storesOf(file).find(({ name }) => name === finding.store);
  return textChangesFor(store, edits, (one) => project.textOf(one));
}

/** The changes of all safe fixes; one that touches what another changes waits for the next round. */
export function safeChanges(project: Project, file: string, findings: readonly Finding[]): TextChange[] {
  const taken: TextChange[] = [];
  for (const finding of findings) {
    if (finding.waived) continue;
    const fix = finding.fixes().find(({ safe }) => safe);
    const changes = fix ? changesOfFix(project, file, finding, fix) : [];
    if (changes.every((change) => taken.every((other) => apart(change, other)))) taken.push(...changes);
  }
  return taken;
}

const apart = (one: TextChange, other: TextChange) =>
  one.file !== other.file || one.end < other.start || other.end < one.start;

/** The text with the changes of its file made. */
export function applyChanges(text: string, changes: readonly TextChange[]): string {
  let result = text;
  for (const { start, end, text: inserted } of changes.toSorted((left, right) => right.start - left.start)) {
    result = result.slice(0, start) + inserted + result.slice(end);
  }
  return result;
}
