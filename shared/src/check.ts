/**
 * Checks one store: runs the rules, gives severities, applies waivers, sorts.
 *
 * A rule that fails inside does not take the others with it: it becomes a finding of its own (`internal-error`).
 */
import { createStudy } from './figures/study.js';
import { compareFindings, type Finding, type Severity } from './finding.js';
import type { Bus, Store, Waiver } from './network.js';
import type { LengthUnit } from './quantity.js';
import { rules as allRules, ruleById } from './rules/index.js';
import type { Report, Rule } from './rules/rule.js';

/** What a user may set about rules. */
export interface CheckSettings {
  /** Severity by rule id; `off` drops its findings. */
  readonly severity?: Readonly<Record<string, Severity | 'off'>>;
  /** Only these rules, when given. */
  readonly only?: ReadonlySet<string>;
  /** Shows all lengths in this unit; unset, as each bus's text has them. */
  readonly lengthUnit?: LengthUnit;
}

/** A report about the text itself, from whoever read it. */
export type NamedReport = Report & { readonly rule: string; readonly store?: string; readonly bus?: string };

/** All findings of a store: those of its text, then those of the rules, in the order of the text. */
export function checkStore(store: Store, textReports: readonly NamedReport[], settings: CheckSettings = {}): Finding[] {
  const findings: Finding[] = [];
  const take = (rule: Rule, report: Report, where: { store?: string; bus?: string }) => {
    const finding = findingOf(rule, report, where, settings);
    if (finding) findings.push(finding);
  };
  for (const report of textReports) {
    const rule = ruleById(report.rule);
    if (rule) take(rule, report, { store: store.name, ...(report.bus === undefined ? {} : { bus: report.bus }) });
  }
  const studies = store.buses.map((bus) =>
    createStudy(store, bus, settings.lengthUnit ? { lengthUnit: settings.lengthUnit } : {}),
  );
  for (const rule of allRules) {
    if (rule.scope === 'text' || settings.severity?.[rule.id] === 'off') continue;
    if (rule.scope === 'bus') {
      for (const study of studies) {
        const { kind, name } = study.bus;
        if (!kind || (rule.kinds !== 'every' && !rule.kinds.includes(kind))) continue;
        guarded(rule, study.bus, findings, () =>
          rule.check(study, (report) => take(rule, report, { store: store.name, bus: name })),
        );
      }
    } else {
      guarded(rule, store, findings, () =>
        rule.check(store, studies, (report) =>
          take(rule, report, { store: store.name, ...(report.bus ? { bus: report.bus.name } : {}) }),
        ),
      );
    }
  }
  const waived = applyWaivers(store, findings, settings);
  return waived.sort(compareFindings);
}

/** Reports about a file outside any store: its catalogue, its imports, its syntax. */
export function checkText(textReports: readonly NamedReport[], settings: CheckSettings = {}): Finding[] {
  const findings: Finding[] = [];
  for (const report of textReports) {
    const rule = ruleById(report.rule);
    const finding = rule && findingOf(rule, report, report.bus === undefined ? {} : { bus: report.bus }, settings);
    if (finding) findings.push(finding);
  }
  return findings.sort(compareFindings);
}

function findingOf(
  rule: Rule,
  report: Report,
  where: { store?: string; bus?: string },
  settings: CheckSettings,
): Finding | undefined {
  if (settings.only && !settings.only.has(rule.id)) return undefined;
  const severity = settings.severity?.[rule.id] ?? report.severity ?? rule.severity;
  if (severity === 'off') return undefined;
  return {
    rule: rule.id,
    severity,
    message: report.message,
    place: report.place,
    related: report.related ?? [],
    fixes: report.fixes ?? noFixes,
    ...where,
    ...(report.at === undefined ? {} : { at: report.at }),
    ...(report.unnecessary ? { unnecessary: true } : {}),
  };
}
const noFixes = () => [];

function guarded(rule: Rule, subject: Bus | Store, findings: Finding[], check: () => void): void {
  try {
    check();
  } catch (error) {
    findings.push({
      rule: 'internal-error',
      severity: 'warning',
      message: `rule ${rule.id} failed on ${subject.name} (${error instanceof Error ? error.message : String(error)}); this is a mistake in Fieldpair, please report it with this file`,
      place: subject.place,
      related: [],
      fixes: noFixes,
    });
  }
}

function covers(waiver: Waiver, finding: Finding, store: Store): boolean {
  if (waiver.rule !== finding.rule) return false;
  if (waiver.bus !== undefined && store.buses[waiver.bus]?.name !== finding.bus) return false;
  return waiver.at === undefined || finding.at === waiver.at || finding.at?.startsWith(`${waiver.at}.`) === true;
}

function applyWaivers(store: Store, findings: readonly Finding[], settings: CheckSettings): Finding[] {
  if (store.waivers.length === 0) return [...findings];
  const stale = new Set(store.waivers);
  const result = findings.map((finding) => {
    const waiver = store.waivers.find((one) => covers(one, finding, store));
    if (!waiver) return finding;
    stale.delete(waiver);
    return { ...finding, waived: { reason: waiver.reason, place: waiver.place } };
  });
  const rule = ruleById('waiver-stale');
  for (const waiver of rule ? stale : []) {
    // A rule that did not run has found nothing to waive.
    if (!rule || settings.severity?.[waiver.rule] === 'off' || (settings.only && !settings.only.has(waiver.rule)))
      continue;
    const bus = waiver.bus === undefined ? undefined : store.buses[waiver.bus];
    if (bus?.damaged) continue;
    const report: Report = {
      message: `this waiver of ${waiver.rule} waives nothing any more; remove it`,
      place: waiver.place,
      unnecessary: true,
      fixes: () => [
        {
          title: `Remove the waiver of ${waiver.rule}`,
          safe: true,
          edits: [{ kind: 'write', place: waiver.place, text: '' }],
        },
      ],
    };
    const finding = findingOf(rule, report, { store: store.name, ...(bus ? { bus: bus.name } : {}) }, settings);
    if (finding) result.push(finding);
  }
  return result;
}
