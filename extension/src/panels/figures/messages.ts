/** What the page of figures and its panel say to each other. */
import type { Figures } from '../../../../server/src/protocol.js';

/** What is shown: where things are written is the panel's business. */
export type PageFigures = Omit<Figures, 'rows'> & {
  readonly rows: readonly Pick<Figures['rows'][number], 'cells'>[];
};

export type ToFiguresPage =
  | { readonly figures: PageFigures }
  /** There is nothing to show, and why. */
  | { readonly nothing: string };

/** Show the landing of a row in the text. */
export interface FromFiguresPage {
  readonly goTo: number;
}
