/**
 * What a check of some of the files found, and how such parts become the check of all. Parts can be made by several
 * threads, or kept from one run to the next: only what no part can know alone is computed from them all.
 */
import { type CheckSettings, checkText, compareFindings, type Finding, type Place } from '@fieldpair/shared';
import type { TextReport } from '../build/source.js';
import { usageKey } from './store-units.js';

/** An entry of a catalogue, and where it is declared. */
export interface DeclaredEntry {
  readonly kind: 'cable' | 'device';
  readonly name: string;
  readonly place: Place;
}

export interface PartCheck {
  readonly files: number;
  readonly stores: number;
  readonly buses: number;
  readonly findings: readonly Finding[];
  /** What the files declare for others. */
  readonly declared: readonly DeclaredEntry[];
  /** The catalogue entries that their stores use, of these files or others: see {@link usageKey}. */
  readonly used: readonly string[];
}

/** What a check of everything found. */
export interface ProjectCheck {
  readonly files: number;
  readonly stores: number;
  readonly buses: number;
  readonly findings: readonly Finding[];
}

/** The check of all files, out of parts that have each file once. */
export function wholeCheck(parts: readonly PartCheck[], settings: CheckSettings): ProjectCheck {
  const stores = total(parts, ({ stores: count }) => count);
  const findings = parts.flatMap((part) => part.findings);
  // Without any store the files are a catalogue for others.
  if (0 < stores) {
    const used = new Set(parts.flatMap((part) => part.used));
    const declared = parts.flatMap((part) => part.declared);
    findings.push(
      ...unusedFindings(declared, ({ kind, name, place }) => used.has(usageKey(place.file, kind, name)), settings),
    );
  }
  return {
    files: total(parts, ({ files }) => files),
    stores,
    buses: total(parts, ({ buses }) => buses),
    findings: findings.sort(compareFindings),
  };
}

/** What is said of entries that no store uses; once of a file whose entries are all unused, which is one cause. */
export function unusedFindings(
  declared: readonly DeclaredEntry[],
  isUsed: (entry: DeclaredEntry) => boolean,
  settings: CheckSettings,
): Finding[] {
  const reports: TextReport[] = [];
  const byFile = new Map<string, DeclaredEntry[]>();
  for (const entry of declared.toSorted((left, right) => left.place.start - right.place.start)) {
    const ofFile = byFile.get(entry.place.file);
    if (ofFile) ofFile.push(entry);
    else byFile.set(entry.place.file, [entry]);
  }
  for (const entries of byFile.values()) {
    const unused = entries.filter((entry) => !isUsed(entry));
    const [first, second] = unused;
    if (first && second && unused.length === entries.length) reports.push(unusedFile(first, unused.length));
    else reports.push(...unused.map(unusedEntry));
  }
  return checkText(reports, settings);
}

const unusedEntry = ({ kind, name, place }: DeclaredEntry): TextReport => ({
  rule: 'unused-entry',
  message: `no store that was checked uses ${kind} ${name}; keep it for others, or remove it`,
  place,
  at: name,
  unnecessary: true,
});

const unusedFile = ({ name, place }: DeclaredEntry, count: number): TextReport => ({
  rule: 'unused-entry',
  message: `no store that was checked uses any of the ${count} entries of this file; import it where they are meant to be used, or keep it for others`,
  place,
  at: name,
});

const total = (parts: readonly PartCheck[], count: (part: PartCheck) => number) =>
  parts.reduce((sum, part) => sum + count(part), 0);
