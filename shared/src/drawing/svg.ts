/** From a scene to SVG: the only place where text becomes markup. */
import { escaped } from '../markup.js';
import type { Part, Scene, Shape } from './scene.js';
import { type Colours, drawingStyle } from './style.js';

function shapeSvg(shape: Shape): string {
  switch (shape.shape) {
    case 'path':
      return `<path class="${shape.look}" d="${shape.d}"/>`;
    case 'box': {
      const { x, y, width, height } = shape.box;
      const radius = shape.radius === undefined ? '' : ` rx="${shape.radius}"`;
      return `<rect class="${shape.look}" x="${x}" y="${y}" width="${width}" height="${height}"${radius}/>`;
    }
    case 'circle':
      return `<circle class="${shape.look}" cx="${shape.x}" cy="${shape.y}" r="${shape.r}"/>`;
    case 'text': {
      const anchor = shape.anchor === 'start' ? '' : ` text-anchor="${shape.anchor}"`;
      const weight = shape.bold ? ' font-weight="bold"' : '';
      return `<text class="${shape.look}" x="${shape.x}" y="${shape.y}" font-size="${shape.size}"${anchor}${weight}>${escaped(shape.text)}</text>`;
    }
  }
}

/** One part as a group, with all that is to be said of it as its title. */
function partSvg({ kind, name, findings, shapes }: Part): string {
  const told = [name, ...findings.map(({ severity, message }) => `${severity}: ${message}`)];
  return `<g class="${kind}"><title>${escaped(told.join('\n'))}</title>${shapesSvg(shapes)}</g>`;
}

export const shapesSvg = (shapes: readonly Shape[]): string => shapes.map(shapeSvg).join('');

/** A document of its own. */
export function sceneSvg(scene: Scene, colours: Colours): string {
  const { width, height, title, description, parts } = scene;
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img">`,
    `<title>${escaped(title)}</title>`,
    `<desc>${escaped(description.join(' '))}</desc>`,
    `<style>${drawingStyle(colours)}</style>`,
    `<rect class="paper" width="${width}" height="${height}"/>`,
    ...parts.map(partSvg),
    '</svg>',
    '',
  ].join('\n');
}
