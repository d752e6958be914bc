/** A limit with the document that sets it and how strongly it does. */
export interface Limit {
  /** In SI units, or a count. */
  readonly value: number;
  /** As a person reads it after 'is': `the most that an RS-485 bus should run`. */
  readonly meaning: string;
  /** Document, edition, section. */
  readonly source: string;
  /** 'required' where the document says so; all else is advice, and what is remembered is never more. */
  readonly strength: 'required' | 'guidance' | 'from memory';
}

/** A required limit is broken by an error; exceeding advice is a warning. */
export const severityOf = ({ strength }: Limit) => (strength === 'required' ? 'error' : 'warning');
