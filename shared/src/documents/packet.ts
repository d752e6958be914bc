/**
 * The installer's packet as plain data: sheets made of headings, tables with typed cells, drawings, steps and cautions.
 *
 * What a sheet shows is decided where the sheet is made; a format only sets it on paper, on a screen or into cells.
 * All text is a person's language and free of characters that no format can carry (see `clean.ts`).
 */
import type { Picture } from './picture.js';

/** Size of the paper: US Letter, or A4 (ISO 216). */
export type Paper = 'letter' | 'a4';

export interface Packet {
  /** The store's name in the text, and how people call it. */
  readonly store: string;
  readonly title: string;
  /** Of the texts: what version control calls it; absent when nobody told. */
  readonly revision?: string;
  /** Of issue, as YYYY-MM-DD. */
  readonly date: string;
  readonly paper: Paper;
  /** What every sheet has to say of the plan: that it has errors which are not settled. */
  readonly remark?: string;
  readonly sheets: readonly Sheet[];
}

export type SheetKind =
  | 'title'
  | 'diagram'
  | 'landing-schedule'
  | 'address-table'
  | 'pull-list'
  | 'parts-list'
  | 'commissioning';

/** What one person works from at one time. */
export interface Sheet {
  /** Unlike that of any other sheet of the packet, of lower-case letters, digits and hyphens. */
  readonly id: string;
  readonly kind: SheetKind;
  readonly title: string;
  /** The bus that it is about, as people call it; absent when it is about the whole store. */
  readonly bus?: string;
  readonly landscape: boolean;
  /** Who works from the sheet before it works from this one too, so that it may start on that one's last page. */
  readonly goesOn?: boolean;
  readonly blocks: readonly Block[];
}

export type Block =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'paragraph'; readonly text: string; readonly strong?: boolean }
  /** What is to be feared, in a frame of its own. */
  | { readonly kind: 'cautions'; readonly texts: readonly string[] }
  | { readonly kind: 'facts'; readonly facts: readonly Fact[] }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  /** In this order, each with a box to tick. */
  | { readonly kind: 'steps'; readonly steps: readonly string[] }
  /** Where the list of all sheets goes, under a heading of its own. */
  | { readonly kind: 'contents' }
  /** Lines to be filled in by hand. */
  | { readonly kind: 'signatures'; readonly lines: readonly string[] }
  | { readonly kind: 'table'; readonly table: Table }
  /** The same drawing for paper and wide screens, and for a phone. */
  | { readonly kind: 'drawing'; readonly wide: Picture; readonly narrow: Picture };

export interface Fact {
  readonly name: string;
  readonly value: string;
}

export interface Table {
  /** Unlike that of any other table of the packet, of lower-case letters, digits and hyphens. */
  readonly id: string;
  readonly title: string;
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  /** What its readers have to know of it, below the table. */
  readonly notes: readonly string[];
}

export interface Column {
  readonly head: string;
  /** Of its numbers, where each cell's text does not carry its own. */
  readonly unit?: string;
  /** The unit is part of each cell's text on paper, so that its head there needs none. */
  readonly unitInText?: boolean;
  /** Share of the width, in about characters of text. */
  readonly width: number;
  /** Cells of rows of one group are one cell, that of the group's first row. */
  readonly merged?: boolean;
}

export interface Row {
  /** Rows with the same number belong together and are not parted by the end of a page. */
  readonly group: number;
  readonly cells: readonly Cell[];
  readonly total?: boolean;
}

export type Cell =
  /** Lines of text; the first stands out when it is strong. */
  | { readonly kind: 'text'; readonly lines: readonly string[]; readonly strong?: boolean }
  /** A number in the column's unit, and how people read it. */
  | { readonly kind: 'number'; readonly value: number; readonly text: string }
  /** There is nothing to say here, and that is no oversight. */
  | { readonly kind: 'none' }
  /** A box to tick. */
  | { readonly kind: 'tick' }
  /** Room to write. */
  | { readonly kind: 'blank' }
  /** With a line below where the picture alone could be misread; `text` says the same to whoever has no pictures. */
  | { readonly kind: 'picture'; readonly picture: Picture; readonly text: string; readonly caption?: string };
