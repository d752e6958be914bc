/**
 * A picture as plain shapes, which every format can draw as lines. Coordinates are typographic points (1/72 in, as
 * Adobe's PDF Reference has them), x to the right and y downwards; it is black on white.
 */
export type PictureShape =
  | { readonly kind: 'line'; readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number }
  | {
      readonly kind: 'rectangle';
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly filled?: boolean;
    }
  | {
      readonly kind: 'circle';
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly filled?: boolean;
    }
  | { readonly kind: 'polygon'; readonly points: readonly (readonly [number, number])[]; readonly filled?: boolean }
  /** `y` is its baseline. */
  | {
      readonly kind: 'text';
      readonly x: number;
      readonly y: number;
      readonly size: number;
      readonly text: string;
      readonly anchor: 'start' | 'middle' | 'end';
      readonly strong?: boolean;
    };

export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly PictureShape[];
  /** What it shows, for whoever cannot see it. */
  readonly description: string;
}
