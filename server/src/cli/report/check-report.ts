/** What a check found, with places as people and programs count them. Every format is written from this. */
import type { ProjectCheck } from '@fieldpair/language';
import { compareFindings, type Finding, type Place } from '@fieldpair/shared';
import { shownPath } from '../../files/pair-files.js';
import { LineTable } from './line-table.js';

/** A stretch of text; the end is the first character after it. */
export interface Span {
  /** Relative to the working folder, with forward slashes. */
  readonly file: string;
  readonly path: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

export interface ReportedFinding {
  readonly finding: Finding;
  readonly span: Span;
  readonly related: readonly { readonly message: string; readonly span: Span }[];
}

export interface WaivedFinding extends ReportedFinding {
  readonly reason: string;
  /** The waiver. */
  readonly waivedAt: Span;
}

export interface CheckReport {
  readonly files: number;
  readonly stores: number;
  readonly buses: number;
  /** The files that were asked for, as `Span.file` has them, whether or not anything was found there. */
  readonly asked: readonly string[];
  readonly findings: readonly ReportedFinding[];
  readonly waived: readonly WaivedFinding[];
  /** The line of a file that a span begins on. */
  lineOf(span: Span): string;
}

export function checkReport(
  result: ProjectCheck,
  asked: readonly string[],
  textOf: (file: string) => string | undefined,
  workingFolder: string,
): CheckReport {
  const tables = new Map<string, LineTable>();
  const tableOf = (file: string) => {
    const known = tables.get(file);
    if (known) return known;
    const table = new LineTable(textOf(file) ?? '');
    tables.set(file, table);
    return table;
  };
  const spanOf = ({ file, start, end }: Place): Span => {
    const table = tableOf(file);
    const from = table.position(start);
    const to = table.position(Math.max(start, end));
    return {
      file: shownPath(file, workingFolder),
      path: file,
      line: from.line,
      column: from.column,
      endLine: to.line,
      endColumn: to.column,
    };
  };
  const findings: ReportedFinding[] = [];
  const waived: WaivedFinding[] = [];
  for (const finding of [...result.findings].sort(compareFindings)) {
    const related = finding.related.map(({ message, place }) => ({ message, span: spanOf(place) }));
    const reported = { finding, span: spanOf(finding.place), related };
    if (finding.waived) {
      waived.push({ ...reported, reason: finding.waived.reason, waivedAt: spanOf(finding.waived.place) });
    } else {
      findings.push(reported);
    }
  }
  return {
    files: result.files,
    stores: result.stores,
    buses: result.buses,
    asked: asked.map((file) => shownPath(file, workingFolder)),
    findings,
    waived,
    lineOf: (span) => tableOf(span.path).line(span.line),
  };
}
