/**
 * What is wrong, and how to mend it.
 *
 * A finding is plain data in the engine's own words; editors and terminals render it. Its message can stand alone
 * in a one-line list: what is wrong, where, against which limit, and what to do, with the numbers.
 */
import type { BusIndex, LandingIndex, Place, RunIndex, ShieldTreatment, Termination } from './network.js';
import type { Amperes, BitsPerSecond, Metres, Ohms } from './quantity.js';

export const severities = ['error', 'warning', 'info'] as const;
export type Severity = (typeof severities)[number];

export interface Finding {
  readonly rule: string;
  readonly severity: Severity;
  readonly message: string;
  readonly place: Place;
  /** The other parties: the first of two equal addresses, the runs that add up. In the order of the text. */
  readonly related: readonly RelatedPlace[];
  readonly store?: string;
  readonly bus?: string;
  /** The landing (as `Landing.name`), run or entry that it is about. */
  readonly at?: string;
  /** Likeliest first. Computed only when asked for. */
  readonly fixes: () => readonly Fix[];
  /** The text can be faded: it has no effect. */
  readonly unnecessary?: boolean;
  /** Set when a waiver covers it: it does not count. */
  readonly waived?: { readonly reason: string; readonly place: Place };
}

export interface RelatedPlace {
  readonly message: string;
  readonly place: Place;
}

/** One way to mend a finding. It leaves the finding gone and no new one. */
export interface Fix {
  /** Imperative, with the numbers: `Terminate caseA2 with a 120 ohm resistor`. */
  readonly title: string;
  /**
   * Whether it may be applied without asking. It may where nobody could want another: it is the only way to mend the
   * finding, it buys, moves and changes nothing in the store, and it contradicts nothing that the text states. So it
   * writes down what follows from the rest of the text, or takes away what has no effect. `fix` applies these alone.
   */
  readonly safe: boolean;
  readonly edits: readonly NetworkEdit[];
}

/**
 * A change to a network in the engine's own terms. The language layer turns it into text edits, using the places
 * that the network keeps. Indices are those of the network that the finding was made from.
 */
export type NetworkEdit =
  /** Gives a landing a terminator; replaces one that is written there. */
  | ({ readonly kind: 'terminate'; readonly means: 'resistor' } & AtLanding & Termination)
  | ({ readonly kind: 'terminate'; readonly means: 'switch' } & AtLanding)
  /** Removes every terminator written at a landing. */
  | ({ readonly kind: 'unterminate' } & AtLanding)
  | ({ readonly kind: 'set-address'; readonly address: number } & AtLanding)
  | ({ readonly kind: 'uncross' } & AtLanding)
  /** Writes a landing that is under one heading of an area under another. */
  | ({ readonly kind: 'set-area'; readonly area: string } & AtLanding)
  /** Lands on another port of the same node. */
  | ({ readonly kind: 'set-port'; readonly port: string } & AtLanding)
  | ({ readonly kind: 'set-shield'; readonly treatment: ShieldTreatment } & AtLanding)
  /** Earths the shield at a landing, directly or through a resistor and a capacitor in parallel; replaces an earth that is written there. */
  | ({ readonly kind: 'earth-shield'; readonly through?: Termination } & AtLanding)
  | { readonly kind: 'remove-earth'; readonly bus: BusIndex; readonly earth: number }
  /** Says how a landing's contact lies in its loop. */
  | ({ readonly kind: 'wire-contact'; readonly wiring: WiringEdit } & AtLanding)
  /** Gives a run a fuse, in place of the one that it may have. */
  | { readonly kind: 'set-fuse'; readonly bus: BusIndex; readonly run: RunIndex; readonly amperes: Amperes }
  | ({ readonly kind: 'add-bias'; readonly up: Ohms; readonly down: Ohms } & AtLanding)
  | { readonly kind: 'set-bias'; readonly bus: BusIndex; readonly bias: number; readonly up: Ohms; readonly down: Ohms }
  | { readonly kind: 'remove-bias'; readonly bus: BusIndex; readonly bias: number }
  /** `cable` undefined: the bus's own cable. */
  | { readonly kind: 'set-run-cable'; readonly bus: BusIndex; readonly run: RunIndex; readonly cable?: string }
  /** `on CABLE` of the bus itself. */
  | { readonly kind: 'set-bus-cable'; readonly bus: BusIndex; readonly cable: string }
  | { readonly kind: 'set-rate'; readonly bus: BusIndex; readonly rate: BitsPerSecond }
  | { readonly kind: 'set-format'; readonly bus: BusIndex; readonly format: string }
  | { readonly kind: 'mark-spare'; readonly bus: BusIndex; readonly run: RunIndex }
  /** Removes a run. A landing that is reached by it alone goes with it, unless another edit re-attaches it. */
  | { readonly kind: 'remove-run'; readonly bus: BusIndex; readonly run: RunIndex }
  /** Replaces every `from`, run and tap of a bus by these, in this order; properties of landings are kept. */
  | { readonly kind: 'rewire'; readonly bus: BusIndex; readonly course: readonly CourseStep[] }
  | DivideBus
  /** Gives a node (declared at `place`) a revision. */
  | { readonly kind: 'set-revision'; readonly node: string; readonly revision: string }
  /** Rewrites a stretch of text; for what has no meaning in the network: names, units, stale text. */
  | { readonly kind: 'write'; readonly place: Place; readonly text: string };

export type WiringEdit =
  | { readonly kind: 'breaks'; readonly conductor: 'plus' | 'minus'; readonly bridge?: Ohms }
  | { readonly kind: 'across'; readonly through?: Ohms };

interface AtLanding {
  readonly bus: BusIndex;
  readonly landing: LandingIndex;
}

/** One step of a re-drawn bus: lift the pen, or pull a run. `run` keeps an old run's cable and remarks. */
export type CourseStep =
  | { readonly step: 'from'; readonly landing: LandingIndex }
  | { readonly step: 'to' | 'tap'; readonly landing: LandingIndex; readonly length: Metres; readonly run?: RunIndex };

/**
 * Divides a bus into several at repeaters, which are new nodes. One part stays the bus; each other becomes a new bus of
 * the same kind, rate and cable. What the text says of a landing goes where the landing goes; what it says of the bus as
 * a whole holds for every part.
 */
export interface DivideBus {
  readonly kind: 'divide';
  readonly bus: BusIndex;
  readonly repeaters: readonly NewRepeater[];
  readonly kept: DividedPart;
  /** In the order in which they are written: each behind the part that its repeater is nearer to. */
  readonly added: readonly AddedPart[];
}

/** A repeater with its near port on the part that is nearer to the head, beside whose last device it stands. */
export interface NewRepeater {
  readonly node: string;
  readonly device: string;
  readonly near: NewPort;
  readonly far: NewPort;
}

/** A port of a node that the text does not have yet, and the terminator that is put there. */
export interface NewPort {
  readonly port: string;
  readonly terminator: 'switch' | 'fixed' | Termination;
}

export interface DividedPart {
  readonly course: readonly DividedStep[];
  /** Whether its shield has to be earthed now that the earths of the bus go to other parts: at its anchor. */
  readonly earth: boolean;
  /** The resistors of the bias that it needs now, at its anchor. */
  readonly bias?: Ohms;
  readonly anchor: DividedLanding;
}

export interface AddedPart extends DividedPart {
  readonly name: string;
  /** The repeater that it lies beyond, seen from the head. */
  readonly beyond: number;
}

/** A landing of the bus, or a port of one of the new repeaters. */
export type DividedLanding = LandingIndex | { readonly repeater: number; readonly side: 'near' | 'far' };

export type DividedStep =
  | { readonly step: 'from'; readonly landing: DividedLanding }
  | {
      readonly step: 'to' | 'tap';
      readonly landing: DividedLanding;
      readonly length: Metres;
      readonly run?: RunIndex;
    };

/** Findings in the order of the text: by file, place, rule. The same for every way that files were read. */
export function compareFindings(left: Finding, right: Finding): number {
  return (
    compareText(left.place.file, right.place.file) ||
    left.place.start - right.place.start ||
    left.place.end - right.place.end ||
    compareText(left.rule, right.rule) ||
    compareText(left.message, right.message)
  );
}

const compareText = (left: string, right: string) => (left < right ? -1 : left > right ? 1 : 0);
