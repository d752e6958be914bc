/**
 * Draws a store: every bus as one line in walking order, with everything that is landed on it, and every finding where
 * it is. A pure function of the network, its studies and its findings; the editor, the command line and documents show
 * the same scene.
 */
import type { BusStudy } from '../figures/study.js';
import type { Finding } from '../finding.js';
import type { Store } from '../network.js';
import { type DrawingOptions, drawBus, margin } from './bus-drawing.js';
import { describeBus } from './describe.js';
import { marksOf, signs, signsWidth } from './marks.js';
import { drawNetwork } from './network-drawing.js';
import type { Part, Scene } from './scene.js';
import { text } from './shapes.js';
import { fitted, textWidth } from './text.js';

/** A width below this has no room for two cards side by side. */
const leastWidth = 360;
const usualWidth = 1120;

/**
 * @param studies of the buses to draw, usually all of the store's
 * @param findings of the store; waived ones get a quiet sign of their own
 */
export function drawStore(
  store: Store,
  studies: readonly BusStudy[],
  findings: readonly Finding[],
  options: DrawingOptions = {},
): Scene {
  const wanted = options.width ?? usualWidth;
  const width = Math.max(leastWidth, Number.isFinite(wanted) ? Math.round(wanted) : usualWidth);
  const marks = marksOf(store, findings);
  const keyOf = uniqueKeys();
  const parts: Part[] = [];
  const title = titleOf(store, marks.store, width, keyOf);
  parts.push(title);
  let bottom = 52;
  if (studies.length === store.buses.length) {
    for (const [index, network] of store.networks.entries()) {
      const drawn = drawNetwork(store, network, marks.network.get(index) ?? [], bottom, width, keyOf);
      parts.push(...drawn.parts);
      bottom = drawn.bottom + 22;
    }
  }
  for (const study of studies) {
    const own = marks.buses[study.bus.index];
    if (!own) continue;
    const drawn = drawBus(study, own, bottom, { width, scale: options.scale ?? false }, keyOf);
    parts.push(...drawn.parts);
    bottom = drawn.bottom + 22;
  }
  return {
    width,
    height: Math.ceil(bottom + margin - 22),
    title: store.label === undefined ? store.name : `${store.name}, ${store.label}`,
    description: studies.map(describeBus),
    parts,
  };
}

function titleOf(store: Store, findings: readonly Finding[], width: number, keyOf: (wanted: string) => string): Part {
  const room = signsWidth(findings);
  const left = margin + 22 + (room ? room + 8 : 0);
  const [name = ''] = fitted(store.name, width * 0.45, 19, 1, true).lines;
  const beside = left + textWidth(name, 19, true) + 14;
  const shapes = [...signs(findings, margin + 22, 24), text('title', left, 31, name, { size: 19, bold: true })];
  if (store.label !== undefined) {
    const [label = ''] = fitted(store.label, width - margin - beside, 14, 1).lines;
    shapes.push(text('quiet', beside, 31, label, { size: 14 }));
  }
  const key = keyOf(`store ${store.name}`);
  return {
    key,
    kind: 'store',
    name: [`store ${store.name}`, ...(store.label === undefined ? [] : [store.label])].join(', '),
    findings,
    group: key,
    place: store.place,
    covers: [store.place],
    shapes,
  };
}

/** Two things of one name get two keys. */
function uniqueKeys(): (wanted: string) => string {
  const taken = new Map<string, number>();
  return (wanted) => {
    const times = taken.get(wanted) ?? 0;
    taken.set(wanted, times + 1);
    return times === 0 ? wanted : `${wanted} #${times + 1}`;
  };
}
