/** What the drawing's panel and its page say to each other. Parts are named by their keys. */
import type { Drawing, DrawingPart } from '../../../../server/src/protocol.js';

/** A part as the page needs it: where it is written is the panel's business. */
export type PagePart = Pick<DrawingPart, 'key' | 'kind' | 'group' | 'name' | 'markup' | 'landing'> & {
  readonly findings: readonly Pick<DrawingPart['findings'][number], 'severity' | 'message' | 'waived'>[];
};

export type PageDrawing = Omit<Drawing, 'parts'> & { readonly parts: readonly PagePart[] };

export type ToDrawingPage =
  | { readonly kind: 'drawing'; readonly drawing: PageDrawing }
  /** There is nothing to draw, and why. */
  | { readonly kind: 'nothing'; readonly reason: string }
  /** The cursor of the text is in this part; undefined when it is in none. */
  | { readonly kind: 'here'; readonly key: string | undefined }
  /** The Markdown that the text's hover shows for a part. */
  | { readonly kind: 'facts'; readonly key: string; readonly markdown: readonly string[] }
  | { readonly kind: 'fixes'; readonly key: string; readonly titles: readonly string[] }
  /** Something to say to the reader. */
  | { readonly kind: 'say'; readonly text: string };

export type FromDrawingPage =
  /** How the page wants its drawing from now on. */
  | { readonly kind: 'layout'; readonly width: number; readonly scale: boolean }
  /** Shows a part's text; `focus` says whether the keyboard goes there too. */
  | { readonly kind: 'open'; readonly key: string; readonly focus: boolean }
  | { readonly kind: 'facts'; readonly key: string }
  | { readonly kind: 'fixes'; readonly key: string }
  | { readonly kind: 'fix'; readonly key: string; readonly title: string }
  /** Puts a landing behind another; before all others when `after` is absent. Both are keys. */
  | { readonly kind: 'move'; readonly key: string; readonly after?: string };

/** What the page keeps over a reload. */
export interface KeptDrawing {
  readonly zoom: number;
  readonly scale: boolean;
  readonly left: number;
  readonly top: number;
  readonly key: string | undefined;
}
