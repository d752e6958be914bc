/** A picture in a document: shapes as drawings have them, one CSS pixel of a drawing being a point on paper. */
import type { Shape } from '../drawing/scene.js';

export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
  /** So much of it from the top are names, which a page that says them anyway leaves out. */
  readonly titled?: number;
  /** What it shows, for whoever cannot see it. */
  readonly description: string;
}
