/** A picture as SVG 1.1, in a page or as a file of its own. */
import type { Picture, PictureShape } from '@fieldpair/shared/documents';
import { escaped } from './escape.js';

/** @param attributes go onto the outermost element as they are. */
export function pictureSvg({ width, height, shapes, description }: Picture, attributes = ''): string {
  const size = `width="${rounded(width)}pt" height="${rounded(height)}pt" viewBox="0 0 ${rounded(width)} ${rounded(height)}"`;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} role="img" aria-label="${escaped(description)}"${attributes}>` +
    `<title>${escaped(description)}</title><g fill="none" stroke="#000" stroke-width="1">${shapes.map(shapeSvg).join('')}</g></svg>`
  );
}

/** A file that stands alone. */
export const svgFile = (picture: Picture): string =>
  `<?xml version="1.0" encoding="UTF-8"?>\n${pictureSvg(picture, ` font-family="${fonts}"`)}\n`;

const fonts = 'Arial, Helvetica, sans-serif';

function shapeSvg(shape: PictureShape): string {
  switch (shape.kind) {
    case 'line':
      return `<line ${coordinates({ x1: shape.x1, y1: shape.y1, x2: shape.x2, y2: shape.y2 })}/>`;
    case 'rectangle': {
      const { x, y, width, height } = shape;
      return `<rect ${coordinates({ x, y, width, height })}${fill(shape)}/>`;
    }
    case 'circle':
      return `<circle ${coordinates({ cx: shape.x, cy: shape.y, r: shape.radius })}${fill(shape)}/>`;
    case 'polygon': {
      const points = shape.points.map(([x, y]) => `${rounded(x)},${rounded(y)}`).join(' ');
      return `<polygon points="${points}"${fill(shape)}/>`;
    }
    case 'text': {
      const weight = shape.strong ? ' font-weight="bold"' : '';
      const place = coordinates({ x: shape.x, y: shape.y });
      return `<text ${place} font-size="${rounded(shape.size)}" text-anchor="${shape.anchor}"${weight} fill="#000" stroke="none">${escaped(shape.text)}</text>`;
    }
  }
}

const fill = ({ filled }: { readonly filled?: boolean }) => (filled ? ' fill="#000"' : '');
const rounded = (value: number): number => Number(value.toFixed(2));
const coordinates = (values: Readonly<Record<string, number>>): string =>
  Object.entries(values)
    .map(([name, value]) => `${name}="${rounded(value)}"`)
    .join(' ');
