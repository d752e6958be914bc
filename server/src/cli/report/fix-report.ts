/** What `fieldpair fix` did and what it left. */
import type { Finding } from '@fieldpair/shared';
import { shownPath } from '../../files/pair-files.js';
import { LineTable } from './line-table.js';

export interface FixReport {
  readonly dryRun: boolean;
  /** How many files were asked for. */
  readonly looked: number;
  readonly changed: readonly { readonly file: string; readonly before: string; readonly after: string }[];
  readonly applied: readonly AppliedFix[];
  readonly left: readonly LeftFinding[];
}

export interface AppliedFix {
  readonly file: string;
  /** Where the finding was, in the text as it was then. */
  readonly line: number;
  readonly rule: string;
  readonly title: string;
}

/** An error or a warning that is still there. */
export interface LeftFinding {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly rule: string;
  readonly message: string;
  /** Titles of the fixes that need a decision; none where the text alone cannot mend it. */
  readonly choices: readonly string[];
}

/** What is left, in the order of the findings. Information is no fault, so it is not listed. */
export function leftFindings(
  findings: readonly Finding[],
  textOf: (file: string) => string,
  workingFolder: string,
): LeftFinding[] {
  const tables = new Map<string, LineTable>();
  return findings.flatMap((finding) => {
    const { severity, waived, place, rule, message } = finding;
    if (waived || severity === 'info') return [];
    const table = tables.get(place.file) ?? new LineTable(textOf(place.file));
    tables.set(place.file, table);
    const file = shownPath(place.file, workingFolder);
    const choices = finding.fixes().map(({ title }) => title);
    return [{ file, ...table.position(place.start), rule, message, choices }];
  });
}
