/** A drawing that leaves its packet: what every page says of the packet goes with it. */
import { text } from '../drawing/shapes.js';
import { fitted } from '../drawing/text.js';
import { shortCaution } from './cautions.js';
import type { Packet, Sheet } from './packet.js';
import type { Picture } from './picture.js';

const margin = 20;
const size = 11;
const leading = 14;
/** More than any caution takes; a long name ends with an ellipsis. */
const mostLines = 6;

/** With the store, the sheet, the version and the cautions below it. */
export function standingAlone(picture: Picture, packet: Packet, { title, bus }: Sheet): Picture {
  const version = packet.revision === undefined ? [] : [`revision ${packet.revision}`];
  const paragraphs = [
    { words: [packet.title, ...(bus === undefined ? [] : [`bus ${bus}`]), title].join(', ') },
    { words: [...version, packet.date].join(', ') },
    ...(packet.remark === undefined ? [] : [{ words: packet.remark, bold: true }]),
    { words: shortCaution, bold: true },
  ];
  const lines = paragraphs.flatMap(({ words, bold = false }) =>
    fitted(words, picture.width - 2 * margin, size, mostLines, bold).lines.map((line) => ({ line, bold })),
  );
  const below = lines.map(({ line, bold }, index) =>
    text('value', margin, picture.height + (index + 1) * leading, line, { size, bold }),
  );
  return {
    ...picture,
    height: picture.height + lines.length * leading + margin,
    shapes: [...picture.shapes, ...below],
  };
}
