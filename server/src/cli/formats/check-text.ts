/** A check for people: by file, each finding with the line that it is about, the count at the end. */
import type { Severity } from '@fieldpair/shared';
import { counted, plainLine, shownWidth } from '@fieldpair/shared';
import type { CheckReport, ReportedFinding, Span } from '../report/check-report.js';
import { type Paint, painter } from '../terminal.js';
import type { CheckFormat } from './format.js';

const severityStyle = { error: ['bold', 'red'], warning: ['bold', 'yellow'], info: ['bold', 'cyan'] } as const;

export const checkText: CheckFormat = (report, { colour }) => {
  const paint = painter(colour);
  const lines: string[] = [];
  for (const [file, findings] of byFile(report.findings)) {
    lines.push(paint('underline', plainLine(file)));
    for (const reported of findings) {
      lines.push(...findingLines(reported, report, paint), '');
    }
  }
  lines.push(total(report, paint));
  return `${lines.join('\n')}\n`;
};

function byFile(findings: readonly ReportedFinding[]): Map<string, ReportedFinding[]> {
  const groups = new Map<string, ReportedFinding[]>();
  for (const reported of findings) {
    const group = groups.get(reported.span.file);
    if (group) group.push(reported);
    else groups.set(reported.span.file, [reported]);
  }
  return groups;
}

function findingLines({ finding, span, related }: ReportedFinding, report: CheckReport, paint: Paint): string[] {
  const severity = paint([...severityStyle[finding.severity]], finding.severity);
  const lines = [
    `  ${span.line}:${span.column}  ${severity}  ${plainLine(finding.message)}  ${paint('dim', finding.rule)}`,
  ];
  lines.push(...excerpt(report.lineOf(span), span, paint));
  for (const other of related) {
    const where = other.span.file === span.file ? '' : `${plainLine(other.span.file)}:`;
    lines.push(`    see ${where}${other.span.line}:${other.span.column}  ${plainLine(other.message)}`);
  }
  const likeliest = finding.fixes()[0];
  if (likeliest) lines.push(`    ${paint('green', 'fix')} ${plainLine(likeliest.title)}`);
  return lines;
}

/** Longest piece of a source line that is shown, in UTF-16 units. */
const longestPiece = 100;
const contextBefore = 30;

/** The source line, and a line of carets under what the finding is about; nothing for a blank line. */
function excerpt(line: string, span: Span, paint: Paint): string[] {
  if (line.trim() === '') return [];
  const start = span.column - 1;
  const end = span.endLine > span.line ? line.length : span.endColumn - 1;
  const indent = line.length - line.trimStart().length;
  const fits = line.length - indent <= longestPiece;
  const from = fits
    ? Math.min(indent, start)
    : Math.max(0, Math.min(start - contextBefore, line.length - longestPiece));
  const to = fits ? line.length : Math.min(line.length, from + longestPiece);
  const piece = (left: number, right: number) => plainLine(line.slice(left, Math.max(left, right)));
  const before = from > 0 && !fits ? '…' : '';
  const after = to < line.length ? '…' : '';
  const number = String(span.line);
  const gap = ' '.repeat(shownWidth(before + piece(from, start)));
  const carets = '^'.repeat(Math.max(1, shownWidth(piece(start, Math.min(end, to)))));
  return [
    paint('dim', `    ${number} | `) + before + piece(from, to).trimEnd() + after,
    paint('dim', `    ${' '.repeat(number.length)} | `) + gap + paint('red', carets),
  ];
}

function total(report: CheckReport, paint: Paint): string {
  const looked = [
    counted(report.files, 'file'),
    counted(report.stores, 'store'),
    counted(report.buses, 'bus', 'buses'),
  ].join(', ');
  const waived = report.waived.length ? `; ${report.waived.length} waived` : '';
  if (report.findings.length === 0) {
    return `${paint('green', 'Nothing found')} in ${looked}${waived}.`;
  }
  const count = (severity: Severity) => report.findings.filter(({ finding }) => finding.severity === severity).length;
  const parts = [counted(count('error'), 'error'), counted(count('warning'), 'warning'), `${count('info')} info`];
  return `${paint('bold', parts.join(', '))} in ${looked}${waived}.`;
}
