/** The one-line diagram of a bus, for paper and for a phone. */
import { type DrawingOptions, drawStore } from '../drawing/index.js';
import type { Part, Shape } from '../drawing/scene.js';
import { type BusStudy, createStudy } from '../figures/study.js';
import type { Finding } from '../finding.js';
import type { Bus, Store } from '../network.js';
import type { LengthUnit } from '../quantity.js';
import type { Block } from './packet.js';
import type { Picture } from './picture.js';

/**
 * As wide as both papers are upright within their margins, so that a pixel becomes a point and no text is smaller than
 * ten points. Upright they hold as many landings as lying, and other sheets find room below.
 */
const paperWidth = 520;
/** What a phone shows at once. */
const phoneWidth = 360;

/** @param lengthUnit of all sheets, which may not be that of the bus's text */
export function diagram(store: Store, bus: Bus, findings: readonly Finding[], lengthUnit: LengthUnit): Block[] {
  const study = createStudy(store, bus, { lengthUnit });
  return [
    {
      kind: 'drawing',
      wide: drawn(store, study, findings, { width: paperWidth }),
      narrow: drawn(store, study, findings, { width: phoneWidth }),
    },
  ];
}

function drawn(store: Store, study: BusStudy, findings: readonly Finding[], options: DrawingOptions): Picture {
  const { width, height, title, description, parts } = drawStore(store, [study], findings, options);
  return {
    width,
    height,
    titled: titleHeight(parts),
    description: [title, ...description].join('. '),
    shapes: parts.flatMap(({ shapes }) => shapes),
  };
}

/** Above what comes first below the names. */
const headRoom = 2;

/** Down to below the names of store and bus; of the store alone where the bus has signs of findings beside its name. */
function titleHeight(parts: readonly Part[]): number {
  const name = parts.find(({ kind }) => kind === 'bus');
  const [heading] = name?.shapes.filter(({ shape }) => shape === 'text') ?? [];
  const isName = (shape: Shape) =>
    name?.findings.length === 0 && heading?.shape === 'text' && shape.shape === 'text' && shape.y === heading.y;
  const others = parts.filter(({ kind }) => kind !== 'store').flatMap(({ shapes }) => shapes);
  const tops = others.flatMap((shape) => (isName(shape) ? [] : topOf(shape)));
  return Math.max(0, Math.min(...tops) - headRoom);
}

function topOf(shape: Shape): number {
  if (shape.shape === 'box') return shape.box.y;
  if (shape.shape === 'circle') return shape.y - shape.r;
  return shape.shape === 'text' ? shape.y - shape.size : Number.POSITIVE_INFINITY;
}
