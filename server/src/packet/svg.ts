/** A picture as SVG, in a page that has the style of drawings, or as a file of its own. */
import { drawingStyle, escaped, printColours, shapesSvg } from '@fieldpair/shared';
import type { Picture } from '@fieldpair/shared/documents';

/** The looks of all shapes. */
export const pictureStyle = drawingStyle(printColours);

export function pictureSvg({ width, height, shapes, description }: Picture): string {
  const name = escaped(description);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img" aria-label="${name}">${shapesSvg(shapes)}</svg>`;
}

/** A file that stands alone. */
export function svgFile({ width, height, shapes, description }: Picture): string {
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img">`,
    `<title>${escaped(description)}</title>`,
    `<style>${pictureStyle}</style>`,
    `<rect class="paper" width="${width}" height="${height}"/>`,
    shapesSvg(shapes),
    '</svg>',
    '',
  ].join('\n');
}
