/** The drawing of a store, and what is done in it. */
import type { Location, Position, Range } from './places.js';

export interface DrawingParams {
  readonly uri: string;
  /** Chooses the store, where a file has several. */
  readonly position?: Position;
  /** Of the page, in CSS pixels. */
  readonly width: number;
  /** Landings stand where the cable has run so far, instead of evenly. */
  readonly scale: boolean;
}

export interface Drawing {
  readonly title: string;
  /** Everything in words, a paragraph for each bus. */
  readonly description: readonly string[];
  /** CSS for the shapes; colours are the variables `--pair-ink`, `-paper`, `-quiet`, `-rule`, `-error`, `-warning`, `-info`. */
  readonly style: string;
  readonly width: number;
  readonly height: number;
  /** In walking order, bus by bus. */
  readonly parts: readonly DrawingPart[];
}

/** What one can point at in a drawing. */
export interface DrawingPart {
  /** Stays the same while the text around it changes. */
  readonly key: string;
  readonly kind:
    | 'store'
    | 'network'
    | 'bus'
    | 'area'
    | 'landing'
    | 'again'
    | 'joint'
    | 'run'
    | 'spare'
    | 'earth'
    | 'bias';
  /** The key of the bus or network that it belongs to. */
  readonly group: string;
  readonly name: string;
  /** SVG elements, escaped. */
  readonly markup: string;
  /** Where it is written, and the stretches of text that are about it. */
  readonly at: Location;
  readonly covers: readonly Location[];
  readonly findings: readonly {
    readonly severity: 'error' | 'warning' | 'info';
    readonly message: string;
    readonly at: Location;
    /** The reason why it is waived; absent where it is open. */
    readonly waived?: string;
  }[];
  /** The name of a landing, by which it is moved. */
  readonly landing?: string;
}

export interface MoveLandingParams {
  /** A place in the bus. */
  readonly at: Location;
  readonly landing: string;
  /** The landing that it comes behind; absent for the place before all others. */
  readonly after?: string;
}

export interface LandingMove {
  readonly edits: readonly {
    readonly uri: string;
    readonly edits: readonly { readonly range: Range; readonly newText: string }[];
  }[];
  /** How many lengths are kept though they were taken between other landings; each has a remark. */
  readonly remeasured: number;
  /** Why nothing is moved, in one line; there are no edits then. */
  readonly refused?: string;
}
