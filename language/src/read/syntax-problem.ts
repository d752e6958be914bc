/** Something that the grammar does not allow, in a person's words. Offsets into the text, the end excluded. */
export interface SyntaxProblem {
  readonly message: string;
  readonly start: number;
  readonly end: number;
  /**
   * Whatever else seems wrong in this stretch follows from the mistake, and is not told. Undefined where the text was
   * read as though the mistake were mended, so that nothing follows from it.
   */
  readonly echoes?: { readonly start: number; readonly end: number };
  /** What may be written in its place, the likeliest first; an empty text where nothing should stand there. */
  readonly instead?: readonly string[];
}

/** A problem from which others may follow. */
export type UnreadStretch = SyntaxProblem & Required<Pick<SyntaxProblem, 'echoes'>>;
