/** Texts as the builder takes them, and what it notes about names for go-to, references and rename. */
import type { Place, Report } from '@fieldpair/shared';
import type { Sheet } from '../generated/reader.js';
import type { SyntaxProblem } from '../read/syntax-problem.js';

/** A text that was read. Its `file` is the identity that all places carry: a URI in the editor, a path elsewhere. */
export interface SourceText {
  readonly file: string;
  readonly text: string;
  readonly sheet: Sheet;
  readonly problems: readonly SyntaxProblem[];
}

/** What a name can stand for. */
export type NameKind =
  | 'cable'
  | 'device'
  | 'port'
  | 'revision'
  | 'store'
  | 'node'
  | 'splice'
  | 'bus'
  | 'network'
  | 'area'
  | 'indicator';

/** One mention of a name. `target` is the place of its declaration; a declaration is its own target. */
export interface NameUse {
  readonly kind: NameKind;
  readonly name: string;
  readonly place: Place;
  readonly target: Place;
}

/** What is wrong with a text itself, by the id of its rule. */
export type TextReport = Report & { readonly rule: string; readonly bus?: string; readonly store?: string };

export const samePlace = (left: Place, right: Place) =>
  left.start === right.start && left.end === right.end && left.file === right.file;
