/** Something that the grammar does not allow, in a person's words. Offsets into the text, the end excluded. */
export interface SyntaxProblem {
  readonly message: string;
  readonly start: number;
  readonly end: number;
  /** Whatever else seems wrong in this stretch follows from the mistake, and is not told. */
  readonly echoes: { readonly start: number; readonly end: number };
}
