/** Cells of tables: what they say, and how. */
import { figureNodes } from '../../page/figure.js';

export interface GridCell {
  /** Cells with equal keys at one place are the same and stay as they are. */
  readonly key: string;
  readonly content: () => readonly (string | Node)[];
}

export const plainCell = (text: string): GridCell => ({ key: text, content: () => [text] });

export const figureCell = (text: string): GridCell => ({ key: text, content: () => figureNodes(text) });
