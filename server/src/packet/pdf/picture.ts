/** Draws a picture as lines of the PDF. */
import type { Picture, PictureShape } from '@fieldpair/shared/documents';
import type { Pen } from './pen.js';

/** @param scale of 1 it is as large as it says */
export function drawPicture(pen: Pen, { shapes }: Picture, x: number, y: number, scale: number): void {
  const { document } = pen;
  document.save();
  document.translate(x, y).scale(scale).lineWidth(1).lineJoin('miter');
  for (const shape of shapes) drawShape(pen, shape);
  document.restore();
}

/** Letters stand on their base line; DejaVu's rise 0.94 of their size above it (its `hhea` table). */
const ascent = 0.928;

function drawShape(pen: Pen, shape: PictureShape): void {
  const { document } = pen;
  switch (shape.kind) {
    case 'line':
      document.lineWidth(1).moveTo(shape.x1, shape.y1).lineTo(shape.x2, shape.y2).stroke('black');
      return;
    case 'rectangle':
      finish(pen, document.rect(shape.x, shape.y, shape.width, shape.height), shape.filled);
      return;
    case 'circle':
      finish(pen, document.circle(shape.x, shape.y, shape.radius), shape.filled);
      return;
    case 'polygon':
      finish(pen, document.polygon(...shape.points.map(([px, py]) => [px, py])), shape.filled);
      return;
    case 'text': {
      const { x, y, size, text, anchor, strong } = shape;
      pen.text(text, x, y - ascent * size, { size, anchor, weight: strong ? 'bold' : 'regular' });
      return;
    }
  }
}

function finish({ document }: Pen, _path: unknown, filled: boolean | undefined): void {
  document.lineWidth(1);
  if (filled) document.fillAndStroke('black', 'black');
  else document.stroke('black');
}
