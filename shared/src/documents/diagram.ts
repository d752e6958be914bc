/** The one-line diagram of a bus, for paper and for a phone. */
import { type DrawingOptions, drawStore } from '../drawing/index.js';
import type { BusStudy } from '../figures/study.js';
import type { Finding } from '../finding.js';
import type { Store } from '../network.js';
import type { Block } from './packet.js';
import type { Picture } from './picture.js';

/**
 * As wide as both papers are across within their margins, so that a pixel becomes a point and no text is smaller than
 * ten points.
 */
const paperWidth = 720;
/** What a phone shows at once. */
const phoneWidth = 360;

export const diagram = (store: Store, study: BusStudy, findings: readonly Finding[]): Block[] => [
  {
    kind: 'drawing',
    wide: drawn(store, study, findings, { width: paperWidth }),
    narrow: drawn(store, study, findings, { width: phoneWidth }),
  },
];

function drawn(store: Store, study: BusStudy, findings: readonly Finding[], options: DrawingOptions): Picture {
  const { width, height, title, description, parts } = drawStore(store, [study], findings, options);
  return {
    width,
    height,
    description: [title, ...description].join('. '),
    shapes: parts.flatMap(({ shapes }) => shapes),
  };
}
