/** What was fixed, for people: each fix, then what is left and why. In a dry run the patch, fit for `patch`. */
import { counted, plainLine } from '@fieldpair/shared';
import { createTwoFilesPatch } from 'diff';
import type { FixReport, LeftFinding } from '../report/fix-report.js';

/** More than this is for `fieldpair check` to list. */
const mostLeft = 20;

export function fixText(report: FixReport): string {
  const { dryRun, looked, changed, applied, left } = report;
  if (dryRun && changed.length) {
    return changed.map(({ file, before, after }) => createTwoFilesPatch(file, file, before, after)).join('');
  }
  const lines = applied.map(({ file, line, rule, title }) => plainLine(`${file}:${line}  ${title}  ${rule}`));
  const choices = left.filter((one) => one.choices.length);
  const without = left.filter((one) => one.choices.length === 0);
  lines.push(
    ...listOf('Left, since the fix is for you to choose:', choices, ({ choices: [first = '', ...others] }) =>
      others.length ? `${first} (or ${counted(others.length, 'other way', 'other ways')})` : first,
    ),
    ...listOf('Left, since the text alone cannot mend it:', without, ({ message }) => message),
  );
  const did = applied.length
    ? `${counted(applied.length, 'fix', 'fixes')} in ${changed.length} of ${counted(looked, 'file')}`
    : `Nothing to fix without a decision in ${counted(looked, 'file')}`;
  const rest = left.length ? `${counted(left.length, 'finding')} left` : 'nothing left';
  return `${[...lines, `${did}; ${rest}.`].join('\n')}\n`;
}

function listOf(heading: string, findings: readonly LeftFinding[], what: (finding: LeftFinding) => string): string[] {
  if (findings.length === 0) return [];
  const shown = findings.slice(0, mostLeft);
  const more = findings.length - shown.length;
  return [
    heading,
    ...shown.map((one) => plainLine(`  ${one.file}:${one.line}:${one.column}  ${what(one)}  ${one.rule}`)),
    ...(more ? [`  and ${more} more, which fieldpair check lists`] : []),
  ];
}
