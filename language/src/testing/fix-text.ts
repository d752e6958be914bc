/** A text with one fix of a finding applied, as an editor would. */
import type { Finding } from '@fieldpair/shared';
import { applyChanges, changesOfFix } from '../edit/safe-fixes.js';
import { projectOf } from './check-text.js';

/**
 * `fix` counts from 0, the likeliest; throws when the finding has no such fix. `others` are files that the text
 * imports, by name.
 */
export function fixText(
  text: string,
  finding: Finding,
  fix = 0,
  others: Readonly<Record<string, string>> = {},
): string {
  const project = projectOf({ ...others, 'test.pair': text });
  const chosen = finding.fixes()[fix];
  if (!chosen) throw new Error(`${finding.rule} has no fix ${fix}`);
  return applyChanges(text, changesOfFix(project, 'test.pair', finding, chosen));
}
