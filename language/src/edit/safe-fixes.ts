/** The fixes that may be applied without asking (see `Fix.safe`), and fixes as changes of text. */
import type { Finding, Fix } from '@fieldpair/shared';
import type { Project } from '../workspace/project.js';
import type { TextChange } from './text-change.js';
import { textChangesFor } from './text-changes.js';

/** The changes of one fix of a finding in `file`. */
export function changesOfFix(project: Project, file: string, finding: Finding, { edits }: Fix): TextChange[] {
  const store = project.storesOf(file).find(({ name }) => name === finding.store);
  return textChangesFor(store, edits, (one) => project.textOf(one));
}

/** A safe fix of a finding, and what it changes. */
export interface SafeFix {
  readonly finding: Finding;
  readonly fix: Fix;
  readonly changes: readonly TextChange[];
}

/** All safe fixes of findings in `file` that can be made at once; one that touches what another changes has to wait. */
export function safeFixes(project: Project, file: string, findings: readonly Finding[]): SafeFix[] {
  const taken: SafeFix[] = [];
  for (const finding of findings) {
    if (finding.waived) continue;
    const fix = finding.fixes().find(({ safe }) => safe);
    const changes = fix ? changesOfFix(project, file, finding, fix) : [];
    const isApart = changes.every((change) => taken.every((other) => other.changes.every((one) => apart(change, one))));
    if (fix && changes.length && isApart) taken.push({ finding, fix, changes });
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
