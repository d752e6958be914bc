/** Whether a drawing can be read: an independent look at where its texts and cards are. */
import { type Box, type Scene, textBox } from '../drawing/scene.js';
import { textWidth } from '../drawing/text.js';

/** What is illegible, a line each; empty when nothing is. */
export function illegible(scene: Scene): string[] {
  const shapes = scene.parts.flatMap((part) => part.shapes);
  const texts = shapes.flatMap((shape) => {
    if (shape.shape !== 'text') return [];
    return [{ text: shape.text, box: textBox(shape, textWidth(shape.text, shape.size, shape.bold)) }];
  });
  const cards = shapes.flatMap((shape) => (shape.shape === 'box' && /^card\b/.test(shape.look) ? [shape.box] : []));
  const paper = { x: 0, y: 0, width: scene.width, height: scene.height };
  const faults: string[] = [];
  for (const [index, { text, box }] of texts.entries()) {
    if (!Object.values(box).every(Number.isFinite)) faults.push(`${text} is nowhere`);
    if (!inside(box, paper)) faults.push(`${text} leaves the paper`);
    for (const other of texts.slice(index + 1)) if (!apart(box, other.box)) faults.push(`${text} over ${other.text}`);
    for (const card of cards)
      if (!apart(box, card) && !inside(box, card)) faults.push(`${text} over the rim of a card`);
  }
  for (const [index, card] of cards.entries()) {
    if (!inside(card, paper)) faults.push('a card leaves the paper');
    for (const other of cards.slice(index + 1)) if (!apart(card, other)) faults.push('two cards overlap');
  }
  return faults;
}

/** A hair of rounding. */
const hair = 0.02;

const apart = (one: Box, other: Box): boolean =>
  one.x + one.width <= other.x + hair ||
  other.x + other.width <= one.x + hair ||
  one.y + one.height <= other.y + hair ||
  other.y + other.height <= one.y + hair;

const inside = (inner: Box, outer: Box): boolean =>
  outer.x - hair <= inner.x &&
  outer.y - hair <= inner.y &&
  inner.x + inner.width <= outer.x + outer.width + hair &&
  inner.y + inner.height <= outer.y + outer.height + hair;
