/** Parts of a check as plain data, for another thread or a later run: the fixes are computed beforehand. */
import type { PartCheck } from '@fieldpair/language';
import type { Finding, Fix } from '@fieldpair/shared';

type PlainFinding = Omit<Finding, 'fixes'> & { readonly fixes: readonly Fix[] };
export type PlainPart = Omit<PartCheck, 'findings'> & { readonly findings: readonly PlainFinding[] };

export const plainPart = (part: PartCheck): PlainPart => ({
  ...part,
  findings: part.findings.map((finding) => ({ ...finding, fixes: finding.fixes() })),
});

export const partOfPlain = (part: PlainPart): PartCheck => ({
  ...part,
  findings: part.findings.map((finding) => ({ ...finding, fixes: () => finding.fixes })),
});
