/** A picture in a document: shapes as drawings have them, one CSS pixel of a drawing being a point on paper. */
import type { Shape } from '../drawing/scene.js';

export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
  /** What it shows, for whoever cannot see it. */
  readonly description: string;
}
