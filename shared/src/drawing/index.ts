/**
 * The drawing behind one door: `drawStore` makes a scene out of a store, `sceneSvg` a document out of the scene.
 *
 * Start reading at `scene.ts` (what a drawing is), then `strands.ts` (a bus as lines to walk along), `rows.ts` (where
 * its landings stand) and `strand-drawing.ts` (a row from top to bottom).
 */
export type { DrawingOptions } from './bus-drawing.js';
export { drawStore } from './drawing.js';
export {
  type Box,
  type Part,
  type PartKind,
  type Scene,
  type Shape as DrawnShape,
  type TextShape,
  textBox,
} from './scene.js';
export { type Colours, drawingStyle, pageColours, printColours } from './style.js';
export { sceneSvg, shapesSvg } from './svg.js';
export { textWidth } from './text.js';
