/** A check as SARIF (OASIS, Static Analysis Results Interchange Format Version 2.1.0). */
import { pathToFileURL } from 'node:url';
import { type Rule, rules, type Severity } from '@fieldpair/shared';
import type { ArtifactLocation, Location, Log, PhysicalLocation, ReportingDescriptor, Result } from 'sarif';
import type { ReportedFinding, Span, WaivedFinding } from '../report/check-report.js';
import { firstSentence, ruleMarkdown, ruleText } from '../rule-page.js';
import type { CheckFormat } from './format.js';

const levels = { error: 'error', warning: 'warning', info: 'note' } as const satisfies Record<Severity, string>;

export const checkSarif: CheckFormat = (report, { version }) => {
  const ruleIndexes = new Map(rules.map((rule, index) => [rule.id, index]));
  const result = (reported: ReportedFinding) => resultOf(reported, ruleIndexes.get(reported.finding.rule));
  const log: Log = {
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'fieldpair', version, semanticVersion: version, rules: rules.map(descriptor) } },
        columnKind: 'utf16CodeUnits',
        results: [
          // Where some results state their suppressions, section 3.27.23 wants all to state them.
          ...report.findings.map((reported): Result => ({ ...result(reported), suppressions: [] })),
          ...report.waived.map((waived): Result => ({ ...result(waived), suppressions: [suppression(waived)] })),
        ],
        properties: { files: report.files, stores: report.stores, buses: report.buses },
      },
    ],
  };
  return `${JSON.stringify(log, undefined, 2)}\n`;
};

const descriptor = (rule: Rule): ReportingDescriptor => ({
  id: rule.id,
  shortDescription: { text: firstSentence(rule.explanation.what) },
  fullDescription: { text: rule.explanation.what },
  help: { text: ruleText(rule), markdown: ruleMarkdown(rule) },
  defaultConfiguration: { level: levels[rule.severity] },
});

function resultOf({ finding, span, related }: ReportedFinding, ruleIndex: number | undefined): Result {
  const { store, bus, at } = finding;
  return {
    ruleId: finding.rule,
    ...(ruleIndex === undefined ? {} : { ruleIndex }),
    level: levels[finding.severity],
    message: messageOf(finding.message),
    locations: [locationOf(span)],
    relatedLocations: related.map(({ message, span: other }, id) => ({
      id,
      ...locationOf(other),
      message: messageOf(message),
    })),
    properties: {
      ...(store === undefined ? {} : { store }),
      ...(bus === undefined ? {} : { bus }),
      ...(at === undefined ? {} : { at }),
      fixes: finding.fixes().map(({ title }) => title),
    },
  };
}

/** Braces stand for arguments in a message, so that one's own are doubled (section 3.11.5). */
const messageOf = (text: string) => ({ text: text.replace(/[{}]/g, '$&$&') });

const suppression = ({ reason, waivedAt }: WaivedFinding) => ({
  kind: 'inSource' as const,
  status: 'accepted' as const,
  justification: reason,
  location: locationOf(waivedAt),
});

const locationOf = (span: Span): Location => ({ physicalLocation: physicalLocation(span) });

const physicalLocation = (span: Span): PhysicalLocation => ({
  artifactLocation: artifact(span),
  region: { startLine: span.line, startColumn: span.column, endLine: span.endLine, endColumn: span.endColumn },
});

/** A relative reference within the working folder; elsewhere an absolute URI, for `..` is not portable there. */
function artifact({ file, path }: Span): ArtifactLocation {
  const inside = file !== '..' && !file.startsWith('../') && file !== path && !/^[A-Za-z]:/.test(file);
  return { uri: inside ? file.split('/').map(encodeURIComponent).join('/') : pathToFileURL(path).href };
}
