/** A change of text, and the two simplest ones. */
import type { Place } from '@fieldpair/shared';

/** Replaces a stretch of one file's text. */
export interface TextChange {
  readonly file: string;
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** The text of a file; places of the store refer to it. */
export type TextOf = (file: string) => string | undefined;

export const replace = ({ file, start, end }: Place, text: string): TextChange => ({ file, start, end, text });
export const insert = (file: string, at: number, text: string): TextChange => ({ file, start: at, end: at, text });
