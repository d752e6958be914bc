/** A text with one fix of a finding applied, as an editor would. */
import type { Finding } from '@fieldpair/shared';
import { textChangesFor } from '../edit/text-changes.js';
import { projectOf } from './check-text.js';

/** `fix` counts from 0, the likeliest; throws when the finding has no such fix. */
export function fixText(text: string, finding: Finding, fix = 0): string {
  const project = projectOf({ 'test.pair': text });
  const store = project.storesOf('test.pair').find(({ name }) => name === finding.store);
  const chosen = finding.fixes()[fix];
  if (!chosen) throw new Error(`${finding.rule} has no fix ${fix}`);
  let result = text;
  for (const change of textChangesFor(store, chosen.edits, (file) => project.textOf(file)).reverse()) {
    result = result.slice(0, change.start) + change.text + result.slice(change.end);
  }
  return result;
}
