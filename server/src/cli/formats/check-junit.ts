/**
 * A check as JUnit XML, as build servers read it: a suite for each file, a case for each finding.
 *
 * A finding that makes the check fail is a failure, a waived one is skipped, and any other is a case that passes and
 * says in its output what was found. A file without findings is one case that passes.
 */

import { escaped } from '@fieldpair/shared';
import type { CheckReport, ReportedFinding } from '../report/check-report.js';
import { reaches } from '../report/fail-on.js';
import type { CheckFormat, FormatOptions } from './format.js';

interface Suite {
  readonly file: string;
  readonly cases: string[];
  tests: number;
  failures: number;
  skipped: number;
}

export const checkJunit: CheckFormat = (report, options) => {
  const suites = suitesOf(report, options);
  const sum = (field: 'tests' | 'failures' | 'skipped') => suites.reduce((total, suite) => total + suite[field], 0);
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<testsuites name="fieldpair check" tests="${sum('tests')}" failures="${sum('failures')}" errors="0" skipped="${sum('skipped')}">`,
    ...suites.flatMap((suite) => [
      `  <testsuite name="${xmlText(suite.file)}" tests="${suite.tests}" failures="${suite.failures}" errors="0" skipped="${suite.skipped}">`,
      ...suite.cases,
      '  </testsuite>',
    ]),
    '</testsuites>',
  ];
  return `${lines.join('\n')}\n`;
};

function suitesOf(report: CheckReport, options: FormatOptions): Suite[] {
  const suites = new Map<string, Suite>();
  const suiteOf = (file: string) => {
    const known = suites.get(file);
    if (known) return known;
    const suite: Suite = { file, cases: [], tests: 0, failures: 0, skipped: 0 };
    suites.set(file, suite);
    return suite;
  };
  for (const file of report.asked) suiteOf(file);
  for (const reported of report.findings) {
    const suite = suiteOf(reported.span.file);
    if (reaches(reported.finding.severity, options.failOn)) {
      const { rule, message } = reported.finding;
      suite.failures++;
      addCase(
        suite,
        reported,
        `<failure type="${xmlText(rule)}" message="${xmlText(message)}">${details(reported)}</failure>`,
      );
    } else {
      addCase(suite, reported, `<system-out>${details(reported)}</system-out>`);
    }
  }
  for (const reported of report.waived) {
    const suite = suiteOf(reported.span.file);
    suite.skipped++;
    addCase(suite, reported, `<skipped message="${xmlText(`waived: ${reported.reason}`)}"/>`);
  }
  for (const suite of suites.values()) {
    if (suite.tests > 0) continue;
    suite.tests++;
    suite.cases.push(`    <testcase name="nothing found" classname="${xmlText(suite.file)}"/>`);
  }
  return [...suites.values()];
}

function addCase(suite: Suite, { finding, span }: ReportedFinding, outcome: string): void {
  suite.tests++;
  const name = xmlText(`${finding.rule} at ${span.line}:${span.column}`);
  suite.cases.push(
    `    <testcase name="${name}" classname="${xmlText(span.file)}" file="${xmlText(span.file)}" line="${span.line}">`,
    `      ${outcome}`,
    '    </testcase>',
  );
}

function details({ finding, span, related }: ReportedFinding): string {
  const lines = [`${span.file}:${span.line}:${span.column}: ${finding.severity}: ${finding.message}`];
  for (const other of related) {
    lines.push(`see ${other.span.file}:${other.span.line}:${other.span.column}: ${other.message}`);
  }
  return xmlText(lines.join('\n'));
}

/** An attribute keeps only the white space that is written as characters; in content it does no harm. */
const whiteSpace: Readonly<Record<string, string>> = { '\t': '&#9;', '\n': '&#10;', '\r': '&#13;' };

const xmlText = (text: string): string =>
  escaped(text).replace(/[\t\n\r]/g, (character) => whiteSpace[character] ?? character);
