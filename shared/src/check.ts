/**
 * Checks one store: runs the rules, gives severities, applies waivers, sorts.
 *
 * A rule that fails inside does not take the others with it: it becomes a finding of its own (`internal-error`).
 */
import { everyOccasion, type Occasions } from './figures/occasions.js';
import { type Signal, signalOf, signalPending } from './figures/signal.js';
import { type BusStudy, createStudy, type StudyOptions } from './figures/study.js';
import { compareFindings, type Finding, type Fix, type Severity } from './finding.js';
import type { Known } from './known.js';
import type { Bus, BusKind, Store, Waiver } from './network.js';
import type { LengthUnit } from './quantity.js';
import { rules as allRules, ruleById } from './rules/index.js';
import type { BusRule, Report, Rule } from './rules/rule.js';

/** What a user may set about rules. */
export interface CheckSettings {
  /** Severity by rule id; `off` drops its findings. */
  readonly severity?: Readonly<Record<string, Severity | 'off'>>;
  /** Only these rules, when given, and what tells that a text could not be read and so was not judged by them. */
  readonly only?: ReadonlySet<string>;
  /** Shows all lengths in this unit; unset, as each bus's text has them. */
  readonly lengthUnit?: LengthUnit;
  /** Who tells what is left of signals; they are computed at once when left out. */
  readonly signal?: (study: BusStudy) => Known<Signal>;
}

/** A report about the text itself, from whoever read it. */
export type NamedReport = Report & { readonly rule: string; readonly store?: string; readonly bus?: string };

/** All findings of a store: those of its text, then those of the rules, in the order of the text. */
export function checkStore(store: Store, textReports: readonly NamedReport[], settings: CheckSettings = {}): Finding[] {
  const judging = new Judging(store, settings);
  for (const report of textReports) judging.takeText(report);
  const { lengthUnit, signal = signalOf } = settings;
  const options: StudyOptions = { signal, ...(lengthUnit && { lengthUnit }) };
  const studies = store.buses.map((bus) => createStudy(store, bus, options));
  for (const study of studies) judging.judgeBus(study);
  judging.judgeStore(studies);
  return applyWaivers(store, studies, judging.findings, settings).sort(compareFindings);
}

const storeRules = allRules.filter((rule) => rule.scope === 'store');

const noRules: readonly BusRule[] = [];
/** By kind and occasions, of which a fleet has few together. */
const busRules = new Map<BusKind, Map<Occasions, readonly BusRule[]>>();

/** The rules that speak of a kind of bus and look at any of its occasions; none where the kind is unknown. */
function busRulesFor(kind: BusKind | undefined, found: Occasions): readonly BusRule[] {
  if (kind === undefined) return noRules;
  let ofKind = busRules.get(kind);
  if (!ofKind) {
    ofKind = new Map();
    busRules.set(kind, ofKind);
  }
  let known = ofKind.get(found);
  if (!known) {
    known = allRules.filter(
      (rule): rule is BusRule =>
        rule.scope === 'bus' &&
        (rule.kinds === 'every' || rule.kinds.includes(kind)) &&
        (rule.occasions === undefined || (rule.occasions & found) !== 0),
    );
    ofKind.set(found, known);
  }
  return known;
}

/** Where they cannot be told, every rule is asked, so that each that has a mistake inside says so. */
function occasionsToJudge(study: BusStudy): Occasions {
  try {
    return study.occasions;
  } catch {
    return everyOccasion;
  }
}

/** Runs rules on one store, one after the other, and makes findings of what they report. */
class Judging {
  readonly findings: Finding[] = [];
  readonly #store: Store;
  readonly #settings: CheckSettings;
  /** Whose turn it is; what is reported is theirs. */
  #rule: Rule | undefined;
  #bus: Bus | undefined;

  constructor(store: Store, settings: CheckSettings) {
    this.#store = store;
    this.#settings = settings;
  }

  takeText(report: NamedReport): void {
    const rule = ruleById(report.rule);
    if (rule) this.#take(rule, report, report.bus);
  }

  judgeBus(study: BusStudy): void {
    this.#bus = study.bus;
    for (const rule of busRulesFor(study.bus.kind, occasionsToJudge(study))) {
      if (!this.#isOn(rule)) continue;
      this.#rule = rule;
      try {
        rule.check(study, this.#report);
      } catch (error) {
        this.findings.push(failureOf(rule, study.bus, error));
      }
    }
  }

  judgeStore(studies: readonly BusStudy[]): void {
    this.#bus = undefined;
    for (const rule of storeRules) {
      if (!this.#isOn(rule)) continue;
      this.#rule = rule;
      try {
        rule.check(this.#store, studies, this.#report);
      } catch (error) {
        this.findings.push(failureOf(rule, this.#store, error));
      }
    }
  }

  #isOn({ id }: Rule): boolean {
    const { severity, only } = this.#settings;
    return (severity === undefined || severity[id] !== 'off') && (only === undefined || only.has(id));
  }

  /** One for all rules and buses: a check makes thousands of calls and hardly ever a report. */
  readonly #report = (report: Report & { readonly bus?: Bus }): void => {
    if (this.#rule) this.#take(this.#rule, report, (report.bus ?? this.#bus)?.name);
  };

  #take(rule: Rule, report: Report, bus: string | undefined): void {
    const where = { store: this.#store.name, ...(bus === undefined ? {} : { bus }) };
    const finding = findingOf(rule, report, where, this.#settings);
    if (finding) this.findings.push(finding);
  }
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
  if (settings.only && !settings.only.has(rule.id) && !unreadRules.has(rule.id)) return undefined;
  const severity = settings.severity?.[rule.id] ?? report.severity ?? rule.severity;
  if (severity === 'off') return undefined;
  return {
    rule: rule.id,
    severity,
    message: report.message,
    place: report.place,
    related: report.related ?? [],
    fixes: report.fixes ? guardedFixes(report.fixes) : noFixes,
    ...where,
    ...(report.at === undefined ? {} : { at: report.at }),
    ...(report.unnecessary ? { unnecessary: true } : {}),
  };
}
const noFixes = () => [];

/** A fix that cannot be computed is not offered; the finding stands all the same. */
const guardedFixes = (fixes: () => readonly Fix[]) => () => {
  try {
    return fixes();
  } catch {
    return noFixes();
  }
};

/** Rules whose findings mean that a stretch of text, or a file, was not judged by any other. */
const unreadRules: ReadonlySet<string> = new Set(['syntax', 'import-missing', 'import-unreadable']);

function failureOf(rule: Rule, subject: Bus | Store, error: unknown): Finding {
  return {
    rule: 'internal-error',
    severity: 'warning',
    message: `rule ${rule.id} failed on ${subject.name} (${error instanceof Error ? error.message : String(error)}); this is a mistake in Fieldpair, please report it with this file`,
    place: subject.place,
    related: [],
    fixes: noFixes,
  };
}

function covers(waiver: Waiver, finding: Finding, store: Store): boolean {
  if (waiver.rule !== finding.rule) return false;
  if (waiver.bus !== undefined && store.buses[waiver.bus]?.name !== finding.bus) return false;
  return waiver.at === undefined || finding.at === waiver.at || finding.at?.startsWith(`${waiver.at}.`) === true;
}

/** Rules whose findings come and go with the simulation alone. */
const simulated: ReadonlySet<string> = new Set(['margin-low']);

function applyWaivers(
  store: Store,
  studies: readonly BusStudy[],
  findings: readonly Finding[],
  settings: CheckSettings,
): Finding[] {
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
    if (simulated.has(waiver.rule) && studies.some(({ signal }) => signal === signalPending)) continue;
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
