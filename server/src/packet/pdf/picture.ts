/** Draws pictures as lines of the PDF, a tall one in strips that each fit on a page. */
import type { DrawnShape } from '@fieldpair/shared';
import type { Picture } from '@fieldpair/shared/documents';
import { type Look, lookOf } from './looks.js';
import type { Pages } from './page.js';
import type { Pen } from './pen.js';

/** @param scale of 1 it is as large as it says */
export function drawPicture(pen: Pen, { shapes }: Picture, x: number, y: number, scale: number): void {
  const { document } = pen;
  document.save();
  document.translate(x, y).scale(scale).lineJoin('round');
  for (const shape of shapes) drawShape(pen, shape);
  document.restore();
}

/** From one cut to the next. */
export interface Strip {
  readonly top: number;
  readonly bottom: number;
}

/** A picture over as many pages as it takes. */
export function setPicture(pages: Pages, picture: Picture): void {
  pages.pen.tags.element('Figure', () => setStrips(pages, picture), { alt: picture.description });
}

function setStrips(pages: Pages, picture: Picture): void {
  const scale = Math.min(1, pages.width / picture.width);
  for (const strip of stripsOf(picture, pages.room / scale, pages.height / scale)) {
    const height = (strip.bottom - strip.top) * scale;
    // A strip that no page holds has no place at which it could be cut.
    const fitting = Math.min(scale, (scale * pages.height) / height);
    pages.need(height * (fitting / scale));
    const { document } = pages.pen;
    pages.pen.tags.content(() => {
      document.save();
      document.rect(pages.left, pages.y, pages.width, height).clip();
      drawPicture(pages.pen, within(picture, strip), pages.left, pages.y - strip.top * fitting, fitting);
      document.restore();
    });
    pages.y += height * (fitting / scale);
  }
}

/** A strip that is shorter than this share of a page is not worth a page of its own. */
const leastShare = 0.25;

/** What is written so closely below a box belongs to it. */
const captionRoom = 16;

/**
 * Cuts a picture below boxes and what is written below them: where nothing but lines runs through, and of such places where the fewest do,
 * the lowest that a page has room for.
 *
 * @param first what is left of the page that it starts on @param others what a whole page holds
 */
export function stripsOf({ shapes, height, titled = 0 }: Picture, first: number, others: number): Strip[] {
  const solid = shapes.flatMap((shape) => extentOf(shape) ?? []);
  const lines = shapes.flatMap((shape) => (shape.shape === 'path' ? (lineExtent(shape.d) ?? []) : []));
  const crossed = (y: number, extents: readonly Strip[]) =>
    extents.filter(({ top, bottom }) => top < y && y < bottom).length;
  const texts = shapes.flatMap((shape) => (shape.shape === 'text' ? (extentOf(shape) ?? []) : []));
  const below = (box: number) =>
    Math.max(box, ...texts.flatMap(({ top, bottom }) => (box <= top && top < box + captionRoom ? bottom : [])));
  const boxes = shapes.flatMap((shape) => (shape.shape === 'box' ? shape.box.y + shape.box.height : []));
  const cuts = [...new Set(boxes.map((box) => Math.ceil(below(box)) + 1))]
    .filter((y) => crossed(y, solid) === 0)
    .map((y) => ({ y, lines: crossed(y, lines) }))
    .sort((one, other) => one.lines - other.lines || other.y - one.y);
  const strips: Strip[] = [];
  let top = titled;
  let room = others * leastShare < first ? first : others;
  // Empty paper at the bottom is not worth a page.
  const end = Math.min(height, Math.max(0, ...[...solid, ...lines].map(({ bottom }) => bottom)) + 2);
  while (room < end - top) {
    const least = top + room * leastShare;
    const cut = cuts.find(({ y }) => least <= y && y <= top + room) ?? cuts.find(({ y }) => top + room < y);
    if (!cut) break;
    strips.push({ top, bottom: cut.y });
    top = cut.y;
    room = others;
  }
  return [...strips, { top, bottom: end }];
}

/** From top to bottom of a path of straight lines by absolute places; undefined for any other. */
function lineExtent(path: string): Strip | undefined {
  if (!/^[MLHVZ\d .,-]*$/.test(path)) return undefined;
  const heights = [...path.matchAll(/[ML]\s*-?[\d.]+[ ,]+(-?[\d.]+)|V\s*(-?[\d.]+)/g)].map(([, end, own]) =>
    Number(end ?? own),
  );
  return heights.length === 0 ? undefined : { top: Math.min(...heights), bottom: Math.max(...heights) };
}

/** From the top of a shape that must not be cut to its bottom; undefined for lines. */
function extentOf(shape: DrawnShape): Strip | undefined {
  switch (shape.shape) {
    case 'path':
      return undefined;
    case 'box':
      return { top: shape.box.y, bottom: shape.box.y + shape.box.height };
    case 'circle':
      return { top: shape.y - shape.r, bottom: shape.y + shape.r };
    case 'text':
      return { top: shape.y - shape.size, bottom: shape.y + 0.3 * shape.size };
  }
}

/** Lines, and what lies in a strip. */
function within(picture: Picture, { top, bottom }: Strip): Picture {
  const shapes = picture.shapes.filter((shape) => {
    const extent = extentOf(shape);
    return !extent || (top < extent.bottom && extent.top < bottom);
  });
  return { ...picture, shapes };
}

/** What the letters of the typeface rise above their base line, as a share of their size (its `hhea` table). */
const ascent = 0.928;

function drawShape(pen: Pen, shape: DrawnShape): void {
  const { document } = pen;
  switch (shape.shape) {
    case 'path':
      finish(pen, lookOf('path', shape.look), () => document.path(shape.d));
      return;
    case 'box': {
      const { x, y, width, height } = shape.box;
      const round = Math.min(shape.radius ?? 0, width / 2, height / 2);
      finish(pen, lookOf('rect', shape.look), () =>
        round === 0 ? document.rect(x, y, width, height) : document.roundedRect(x, y, width, height, round),
      );
      return;
    }
    case 'circle':
      finish(pen, lookOf('circle', shape.look), () => document.circle(shape.x, shape.y, shape.r));
      return;
    case 'text': {
      const { x, y, size, text, anchor, bold, look } = shape;
      const colour = lookOf('text', look).fill ?? 'black';
      pen.text(text, x, y - ascent * size, { size, anchor, weight: bold ? 'bold' : 'regular', colour });
      return;
    }
  }
}

function finish({ document }: Pen, { stroke, fill, width, dash, cap }: Look, outline: () => unknown): void {
  if (stroke === undefined && fill === undefined) return;
  document.lineWidth(width).lineCap(cap);
  if (dash) document.dash(dash[0], { space: dash[1] });
  else document.undash();
  outline();
  if (stroke !== undefined && fill !== undefined) document.fillAndStroke(fill, stroke);
  else if (stroke !== undefined) document.stroke(stroke);
  else document.fill(fill);
}
