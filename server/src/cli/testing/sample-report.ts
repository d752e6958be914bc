/** A report with everything that a format has to cope with: markup, control characters, waivers, other files. */
import { join } from 'node:path';
import type { Finding } from '@fieldpair/shared';
import { type CheckReport, checkReport } from '../report/check-report.js';

const folder = join(process.cwd(), 'stores');
export const texts = {
  'north gate/wiring.pair': 'store northgate {\n\t// Käse\n  30 ft to comp1 crossed\n}\n',
  'plain.pair': 'store plain {\n}\n',
};
const path = (file: string) => join(folder, ...file.split('/'));
const wiring = path('north gate/wiring.pair');

const at = (start: number, end: number, file = wiring) => ({ file, start, end });
const base = { related: [], fixes: () => [], place: at(0, 5) };

export const sampleFindings: readonly Finding[] = [
  {
    ...base,
    rule: 'polarity-crossed',
    severity: 'error',
    message: 'the pair is <swapped> & "crossed" at comp1: 100 %, as\u0007 measured\nby 2, 3',
    place: at(44, 51),
    store: 'northgate',
    bus: 'chillers',
    at: 'comp1',
    related: [{ message: 'the run before it', place: at(29, 34) }],
    fixes: () => [{ title: 'Land comp1 uncrossed', safe: false, edits: [] }],
  },
  { ...base, rule: 'mixed-cable', severity: 'warning', message: 'two cables', place: at(19, 42) },
  {
    ...base,
    rule: 'unused-entry',
    severity: 'info',
    message: 'nobody uses it',
    place: at(6, 11, path('../catalogue.pair')),
  },
  {
    ...base,
    rule: 'shield-unearthed',
    severity: 'error',
    message: 'the shield is earthed nowhere',
    waived: { reason: 'agreed in change 41 by "both"', place: at(6, 15) },
  },
];

export function sampleReport(findings: readonly Finding[] = sampleFindings): CheckReport {
  const byPath = new Map<string, string>(Object.entries(texts).map(([file, text]) => [path(file), text]));
  byPath.set(path('../catalogue.pair'), 'cable Blue1 {\n}\n');
  const asked = Object.keys(texts).map(path);
  return checkReport({ files: 2, stores: 2, buses: 1, findings }, asked, (file) => byPath.get(file), folder);
}
