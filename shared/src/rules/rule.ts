/**
 * What a rule is. One file each, named like its id, its test beside it; `index.ts` lists them all.
 *
 * A rule looks at a bus or a store through a {@link BusStudy}, which computes each figure once. It reports one
 * finding for one cause and stays silent where the text is damaged or a name unresolved: that has its own finding.
 */
import type { Occasions } from '../figures/occasions.js';
import type { BusStudy } from '../figures/study.js';
import type { Fix, RelatedPlace, Severity } from '../finding.js';
import type { Bus, BusKind, Landing, Place, Run, Store } from '../network.js';

/** The page of a rule. Every part is Markdown; missing parts do not compile. */
export interface Explanation {
  /** What the rule looks for: one or two sentences, the first of which stands alone in a list. */
  readonly what: string;
  /** Why it matters physically. */
  readonly why: string;
  /** How it shows in the field. */
  readonly field: string;
  /** What to do about it. */
  readonly mend: string;
  /** `.pair` text (a whole file) that yields exactly one finding of this rule, and one that yields none. */
  readonly bad: string;
  readonly good: string;
  /** Document, edition and section; 'common practice, no published source'; 'from memory of …'. */
  readonly sources: readonly string[];
  /** The version of the project that has it first. */
  readonly since: string;
}

interface RuleBase {
  readonly id: string;
  readonly severity: Severity;
  /** The kinds of bus that it speaks of. */
  readonly kinds: 'every' | readonly BusKind[];
  readonly explanation: Explanation;
}

/** What a rule reports; severity, store and bus are filled in from the rule and its subject. */
export interface Report {
  readonly message: string;
  readonly place: Place;
  readonly related?: readonly RelatedPlace[];
  readonly at?: string;
  readonly fixes?: () => readonly Fix[];
  /** Only where one rule has cases of different weight, such as a limit from memory beside one from a standard. */
  readonly severity?: Severity;
  readonly unnecessary?: boolean;
}

/** A rule about one bus. */
export interface BusRule extends RuleBase {
  readonly scope: 'bus';
  /**
   * Where it is asked at all: on a bus that has any of these. Left out, it looks at every bus. Only spares calls: `check`
   * has nothing to say elsewhere, to which `test/occasions.test.ts` holds it.
   */
  readonly occasions?: Occasions;
  readonly check: (study: BusStudy, report: (finding: Report) => void) => void;
}

/** A rule about what buses of one store do to each other. */
export interface StoreRule extends RuleBase {
  readonly scope: 'store';
  readonly check: (
    store: Store,
    studies: readonly BusStudy[],
    report: (finding: Report & { readonly bus?: Bus }) => void,
  ) => void;
}

/**
 * A rule about text: names, units, numbers. What it looks for is found while the network is built; the file holds
 * its page and its severity.
 */
export interface TextRule extends RuleBase {
  readonly scope: 'text';
}

export type Rule = BusRule | StoreRule | TextRule;

/** `Bus chillers` at the start of a message, `bus chillers` within. */
export const busName = (bus: Bus) => `bus ${bus.name}`;

export type { Bus, Landing, Run, Store };
