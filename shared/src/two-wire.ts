/**
 * What ports, cables and landings state on the two kinds of circuit that carry no data: low-voltage supplies and
 * alarm contact loops.
 */
import type { Place } from './catalogue.js';
import type { Amperes, Ohms, Ratio, Volts, Watts } from './quantity.js';

/** Direct or alternating; absent where the text leaves it open. */
export type SupplyForm = 'ac' | 'dc';

/** What a port that feeds a supply gives. Alternating voltages and currents are effective values. */
export interface SupplySource {
  readonly voltage: Volts;
  readonly form?: SupplyForm;
  /** Up or down from the stated voltage; see `supplyTolerance` where the text gives none. */
  readonly tolerance?: Ratio;
  /** The most that it gives, as it is marked: a current, or a power (VA counts as W). */
  readonly limit?: { readonly amperes: Amperes } | { readonly watts: Watts };
  /** The class that is marked on it (NFPA 70 article 725): 1, 2 or 3. */
  readonly class?: number;
  readonly place: Place;
}

/** What a port takes from a supply, at most: a current that does not depend on the voltage, or a power that does not. */
export interface SupplyLoad {
  readonly amount: { readonly amperes: Amperes } | { readonly watts: Watts };
  /** What it needs; absent where it takes either. */
  readonly form?: SupplyForm;
  /** The voltages between which it works. */
  readonly least?: Volts;
  readonly most?: Volts;
  readonly place: Place;
}

/** What an input takes a resistance of its loop for. */
export const loopMeanings = ['normal', 'alarm', 'fault'] as const;
export type LoopMeaning = (typeof loopMeanings)[number];

/** A stretch of resistances that an input reads as one thing; open-ended where a bound is absent. */
export interface LoopWindow {
  readonly meaning: LoopMeaning;
  readonly above?: Ohms;
  readonly below?: Ohms;
  readonly place: Place;
}

/** What an input asks of the loop that is landed on it. */
export interface LoopInput {
  /** The end-of-line resistor that it is made for. */
  readonly resistor?: { readonly resistance: Ohms; readonly place: Place };
  readonly mostContacts?: { readonly count: number; readonly place: Place };
  /** The most resistance of cable, out and back. */
  readonly mostCable?: { readonly resistance: Ohms; readonly place: Place };
  /** In the order of the text; they may leave gaps, in which the input's answer is not known. */
  readonly windows: readonly LoopWindow[];
}

/** How a contact stands when nothing is wrong. */
export type ContactRest = 'closed' | 'open';

/** How a contact lies in the loop. */
export type ContactWiring =
  /** One conductor is cut at the landing and its two ends are on the contact; a resistor may bridge the contact. */
  | {
      readonly kind: 'breaks';
      readonly conductor: 'plus' | 'minus';
      readonly bridge?: Ohms;
      readonly place: Place;
    }
  /** The contact joins the two conductors, through a resistor where one is given. */
  | { readonly kind: 'across'; readonly through?: Ohms; readonly place: Place };
