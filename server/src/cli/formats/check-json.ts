/** A check for programs, by the schema `fieldpair-check-1`. Fields may be added to it; none changes its meaning. */
import type { ReportedFinding, Span } from '../report/check-report.js';
import type { CheckFormat } from './format.js';

export const checkJson: CheckFormat = (report) => {
  const value = {
    schema: 'fieldpair-check-1',
    files: report.files,
    stores: report.stores,
    buses: report.buses,
    findings: report.findings.map(findingValue),
    waived: report.waived.map((waived) => ({
      ...findingValue(waived),
      reason: waived.reason,
      waivedAt: place(waived.waivedAt),
    })),
  };
  return `${JSON.stringify(value, undefined, 2)}\n`;
};

const findingValue = ({ finding, span, related }: ReportedFinding) => ({
  rule: finding.rule,
  severity: finding.severity,
  message: finding.message,
  ...place(span),
  store: finding.store ?? null,
  bus: finding.bus ?? null,
  at: finding.at ?? null,
  fixes: finding.fixes().map(({ title }) => title),
  related: related.map(({ message, span: where }) => ({ message, ...place(where) })),
});

const place = ({ file, line, column, endLine, endColumn }: Span) => ({ file, line, column, endLine, endColumn });
