/** The few words in which shapes are written. */
import type { Shape, TextShape } from './scene.js';

/** A number as paths have it: to a hundredth, and always finite. */
export const n = (value: number): number => (Number.isFinite(value) ? Math.round(value * 100) / 100 : 0);

export const path = (look: string, d: string): Shape => ({ shape: 'path', look, d });

export const line = (look: string, x1: number, y1: number, x2: number, y2: number): Shape =>
  path(look, `M${n(x1)} ${n(y1)}L${n(x2)} ${n(y2)}`);

/** A line through several points. */
export const polyline = (look: string, points: readonly (readonly [number, number])[]): Shape =>
  path(look, points.map(([x, y], index) => `${index ? 'L' : 'M'}${n(x)} ${n(y)}`).join(''));

export const box = (look: string, x: number, y: number, width: number, height: number, radius = 0): Shape => ({
  shape: 'box',
  look,
  box: { x: n(x), y: n(y), width: n(width), height: n(height) },
  ...(radius && { radius }),
});

export const circle = (look: string, x: number, y: number, r: number): Shape => ({
  shape: 'circle',
  look,
  x: n(x),
  y: n(y),
  r,
});

export const text = (
  look: string,
  x: number,
  y: number,
  content: string,
  { size = 10.5, anchor = 'start' as TextShape['anchor'], bold = false } = {},
): TextShape => ({ shape: 'text', look, x: n(x), y: n(y), anchor, size, bold, text: content });
