/** The figures of a bus, as a page shows them. All texts are one line each and hold no control characters. */
import type { Location, Position } from './places.js';

export interface FiguresParams {
  readonly uri: string;
  /** Anywhere in the bus. */
  readonly position: Position;
}

export interface Figures {
  /** `northgate, bus cases`. */
  readonly title: string;
  /** The same with the label of the bus. */
  readonly heading: string;
  /** Figures of the bus as a whole: name and value. */
  readonly facts: readonly (readonly [name: string, value: string])[];
  /** Values beside their limits. */
  readonly limits: readonly {
    readonly what: string;
    readonly value: string;
    readonly limit: string;
    /** How much of the limit is used; empty where that cannot be said. */
    readonly used: string;
    /** What sets the limit. */
    readonly document: string;
  }[];
  /** `meaning` is a clause that can follow the title. The first column names the landing. */
  readonly columns: readonly { readonly title: string; readonly meaning?: string }[];
  /** A row for each landing, in walking order. */
  readonly rows: readonly {
    /** A cell for each column; the range of a figure stands in brackets behind it: `60.5 ohm (57 to 64.2 ohm)`. */
    readonly cells: readonly string[];
    readonly at: Location;
  }[];
  /** Why cells are unknown. */
  readonly unknown: readonly string[];
}
