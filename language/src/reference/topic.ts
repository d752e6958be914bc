/**
 * What the language reference, hovers and completion say of a statement. How it is written is derived from the
 * grammar (generated/forms.ts); what it means and what may be written in it is said here, once.
 */
import { allListed, type BusKind, type Dimension, unitsOf } from '@fieldpair/shared';

/** One thing that a quantity may be: its dimension and the least and the most that is taken, as they are written. */
export interface Measure {
  readonly dimension: Dimension;
  /** Nothing at all is too little. */
  readonly positive?: true;
  readonly least?: string;
  readonly most?: string;
}

/** What stands for a word in capitals of a form. */
export interface Value {
  /** Ends without a full stop. */
  readonly what: string;
  readonly measures?: readonly Measure[];
  /** All words that are taken. */
  readonly words?: readonly string[];
}

export interface Topic {
  /** Its heading in the reference, where the first keyword alone would not tell it from others. */
  readonly title?: string;
  /** One or a few sentences. */
  readonly meaning: string;
  /** By the words in capitals of the form. */
  readonly values?: Readonly<Record<string, Value>>;
  /** What holds where it is not written; a sentence. */
  readonly unsaid?: string;
  /** Lines as they stand where the statement may stand. */
  readonly example: string;
  /** The kind of the bus or port that the example is of; RS-485 where unset. */
  readonly kind?: BusKind;
}

export const plain = (what: string): Value => ({ what });
export const oneOf = (words: readonly string[], what: string): Value => ({ what, words });
export const quantity = (what: string, ...measures: readonly Measure[]): Value => ({ what, measures });

/** A value of which nothing at all is too little. */
export const positive = (dimension: Dimension, most?: string): Measure => ({
  dimension,
  positive: true,
  ...(most === undefined ? {} : { most }),
});
export const from = (least: string, dimension: Dimension, most?: string): Measure => ({
  dimension,
  least,
  ...(most === undefined ? {} : { most }),
});

/** `in ft or m, more than 0, at most 1000 km`. */
export function measureText({ dimension, positive: isPositive, least, most }: Measure): string {
  const units = unitsOf(dimension).map((unit) => `\`${unit}\``);
  const bounds = [
    ...(isPositive ? ['more than 0'] : []),
    ...(least === undefined ? [] : [`at least ${least}`]),
    ...(most === undefined ? [] : [`at most ${most}`]),
  ];
  return [`in ${allListed(units, 'or')}`, ...bounds].join(', ');
}
