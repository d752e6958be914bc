/** Findings as diagnostics. Waived ones are not shown: somebody has decided to live with them. */
import type { Finding, Severity } from '@fieldpair/shared';
import { type Diagnostic, DiagnosticSeverity, DiagnosticTag } from 'vscode-languageserver';
import type { Desk } from './desk.js';

const severityOf: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  info: DiagnosticSeverity.Information,
};

export function openFindings(desk: Desk, file: string): Finding[] {
  return desk.project.findingsOf(file).filter(({ waived }) => !waived);
}

export function diagnosticsOf(desk: Desk, findings: readonly Finding[]): Diagnostic[] {
  return findings.map((finding) => diagnosticOf(desk, finding));
}

export function diagnosticOf(desk: Desk, finding: Finding): Diagnostic {
  const diagnostic: Diagnostic = {
    range: desk.rangeOf(finding.place),
    severity: severityOf[finding.severity],
    code: finding.rule,
    source: 'fieldpair',
    message: finding.message,
  };
  if (desk.rulePages !== undefined) diagnostic.codeDescription = { href: `${desk.rulePages}${finding.rule}.md` };
  if (finding.related.length) {
    diagnostic.relatedInformation = finding.related.map(({ message, place }) => ({
      message,
      location: desk.locationOf(place),
    }));
  }
  if (finding.unnecessary) diagnostic.tags = [DiagnosticTag.Unnecessary];
  return diagnostic;
}
