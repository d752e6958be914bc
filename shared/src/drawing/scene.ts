/**
 * A scene: what a drawing shows, as plain shapes with their places on paper, before it becomes SVG.
 *
 * Lengths are CSS pixels (96 to the inch), x to the right and y down. A scene is made of parts; a part is what a reader
 * can point at, and has a key that stays the same while the text around it changes.
 */
import type { Place } from '../catalogue.js';
import type { Finding } from '../finding.js';

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** `look` names the role of a shape; the style gives it its stroke and colour. */
export type Shape =
  | { readonly shape: 'path'; readonly look: string; readonly d: string }
  | { readonly shape: 'box'; readonly look: string; readonly box: Box; readonly radius?: number }
  | { readonly shape: 'circle'; readonly look: string; readonly x: number; readonly y: number; readonly r: number }
  | TextShape;

export interface TextShape {
  readonly shape: 'text';
  readonly look: string;
  /** The start, middle or end of its base line. */
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly size: number;
  readonly bold: boolean;
  readonly text: string;
}

export type PartKind =
  | 'store'
  | 'network'
  | 'bus'
  | 'area'
  | 'landing'
  | 'again'
  | 'joint'
  | 'run'
  | 'spare'
  | 'earth'
  | 'bias';

export interface Part {
  readonly key: string;
  readonly kind: PartKind;
  /** What it is, unshortened: for those who hear the drawing, and for whatever a label had to leave out. */
  readonly name: string;
  /** What is wrong at it; the signs in its shapes count these. */
  readonly findings: readonly Finding[];
  /** The part of the bus or network that it belongs to; its own key for that part itself. */
  readonly group: string;
  /** Where it is written: where to go, and the stretches of text that are about it. */
  readonly place: Place;
  readonly covers: readonly Place[];
  readonly shapes: readonly Shape[];
  /** For a landing: which one of which bus, so that it can be moved. */
  readonly landing?: { readonly bus: number; readonly index: number };
}

export interface Scene {
  readonly width: number;
  readonly height: number;
  readonly title: string;
  /** Everything in words, a paragraph for each bus. */
  readonly description: readonly string[];
  /** In walking order, bus by bus. */
  readonly parts: readonly Part[];
}

/** Where a text is, from its top to below its base line. */
export function textBox({ x, y, anchor, size }: TextShape, width: number): Box {
  const left = anchor === 'start' ? x : anchor === 'middle' ? x - width / 2 : x - width;
  return { x: left, y: y - 0.8 * size, width, height: size };
}
