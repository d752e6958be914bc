/**
 * A check as annotations on GitHub: "Workflow commands for GitHub Actions", sections on setting an error, a warning
 * and a notice message. The runner decodes `%25`, `%0D` and `%0A` everywhere, and `%3A` and `%2C` in properties.
 */
import { counted } from '@fieldpair/shared';
import type { ReportedFinding } from '../report/check-report.js';
import type { CheckFormat } from './format.js';

const commands = { error: 'error', warning: 'warning', info: 'notice' } as const;

export const checkGithub: CheckFormat = (report) => {
  const lines = report.findings.map(annotation);
  const waived = report.waived.length ? `, ${report.waived.length} waived` : '';
  lines.push(`${counted(report.findings.length, 'finding')} in ${counted(report.files, 'file')}${waived}.`);
  return `${lines.join('\n')}\n`;
};

function annotation({ finding, span }: ReportedFinding): string {
  const properties: Record<string, string | number> = { file: span.file, line: span.line, endLine: span.endLine };
  // GitHub takes columns only within one line, and there the last column is part of the stretch.
  if (span.line === span.endLine) {
    properties.col = span.column;
    properties.endColumn = Math.max(span.column, span.endColumn - 1);
  }
  properties.title = finding.rule;
  const list = Object.entries(properties).map(([name, value]) => `${name}=${escapeProperty(String(value))}`);
  return `::${commands[finding.severity]} ${list.join(',')}::${escapeData(finding.message)}`;
}

const escapeData = (text: string) => text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
const escapeProperty = (text: string) => escapeData(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
