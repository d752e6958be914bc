/** One strand: its rows, from the cards above the line down to the cards below it. */

import type { Landing } from '../network.js';
import { areaHeight, areaOf, drawAreas } from './areas.js';
import type { BusContext, Drawn } from './bus-drawing.js';
import { againCard, type Card, landingCard, nowhereCard } from './card.js';
import { type JointSpot, jointLead, lanesHeight } from './joints.js';
import { drawHanging, drawStop, hangingNotes, tapRail } from './landing-drawing.js';
import { signs } from './marks.js';
import type { PlacedStop } from './rows.js';
import { type RunLabel, runLabelOf } from './run-label.js';
import { type Course, isShielded, runLine, type Spot, shieldOf } from './run-line.js';
import { runPart } from './run-part.js';
import type { Part, Shape } from './scene.js';
import { text } from './shapes.js';
import { type StopSides, sidesOf } from './sides.js';
import type { Hanging, Stop, Strand } from './strands.js';
import { fuseSymbol } from './symbols.js';
import { nameOf } from './words.js';

/** The space between cards. */
const gutter = 12;

/** A stop with everything that is known of it before the rows have their heights. */
export interface Draft extends PlacedStop {
  readonly index: number;
  readonly drawn: Card;
  readonly hangingCards: readonly Card[];
  readonly sides: StopSides;
  readonly label: RunLabel | undefined;
}

/** The heights of a row: all of them grow downward. */
export interface RowHeights {
  /** The lower side of the cards that hang above the line. */
  readonly hanging: number;
  /** Where what sits on the landings' leads begins. */
  readonly sides: number;
  /** Where it ends, and the labels of the runs begin. */
  readonly labels: number;
  readonly line: number;
  readonly cards: number;
  /** The lower side of the cards. */
  readonly cardsEnd: number;
  /** The first lane for joints below the cards. */
  readonly lanes: number;
  readonly bottom: number;
}

export function drawStrand(
  context: BusContext,
  strand: Strand,
  placed: readonly PlacedStop[],
  top: number,
): Drawn & { readonly spots: readonly JointSpot[] } {
  const drafts = draftsOf(context, strand, placed);
  const caption = strand.island ? 16 : 0;
  const rows = heightsOf(context, drafts, top + caption);
  const course: Course = {
    lines: rows.map(({ line }) => line),
    returns: rows.map(({ bottom }) => bottom + 12),
    ...context.edges,
  };
  const parts: Part[] = [];
  const spots: JointSpot[] = [];
  const areas = drawAreas(
    context,
    drafts,
    rows.map(({ cardsEnd }) => cardsEnd),
  );
  for (const [position, draft] of drafts.entries()) {
    const row = rows[draft.row];
    if (!row) continue;
    const before = drafts[position - 1];
    if (before && draft.stop.run) parts.push(drawRun(context, before, draft, course, row));
    const stop = drawStop(context, draft, row);
    const shapes = caption && position === 0 ? [...captionOf(context, top), ...stop[0].shapes] : stop[0].shapes;
    const area = areas.get(position);
    if (area) parts.push(area);
    parts.push({ ...stop[0], shapes }, ...stop.slice(1));
    parts.push(...drawHanging(context, draft, row));
    const { landing, again } = draft.stop;
    if (landing === undefined || !context.joints.has(landing)) continue;
    spots.push({ landing, again, begins: again && position === 0, x: draft.x, card: draft.card, ...row });
  }
  return { parts, spots, bottom: rows.at(-1)?.bottom ?? top };
}

const captionOf = ({ page, study }: BusContext, top: number): Shape[] => [
  text('tag', page.left, top + 10, `No cable joins this with ${nameOf(study.bus, 0).slice(0, 40)}.`, { size: 10.5 }),
];

function draftsOf(context: BusContext, { stops }: Strand, placed: readonly PlacedStop[]): Draft[] {
  const width = context.page.pitch - gutter;
  return placed.map((spot, index) => {
    const isFirst = index === 0;
    const isLast = index === stops.length - 1;
    const before = placed[index - 1];
    return {
      ...spot,
      index,
      drawn: cardOf(context, spot.stop, width),
      hangingCards: spot.stop.hanging.map((one) => cardOf(context, one, width)),
      sides: sidesOf(context, spot.stop, isFirst ? 'first' : isLast ? 'last' : 'between'),
      label: before && spot.stop.run && runLabelOf(context, spot.stop.run, before, spot),
    };
  });
}

function cardOf(context: BusContext, one: Stop | Hanging, width: number): Card {
  const { study, marks, letters } = context;
  if (one.landing === undefined) return nowhereCard(width);
  const letter = letters.get(one.landing);
  if (one.again) return againCard(nameOf(study.bus, one.landing), letter ?? '', width);
  const landing = study.bus.landings[one.landing] as Landing;
  // What hangs above the line has no room for symbols, so its card says it.
  const notes = 'hanging' in one ? [] : hangingNotes(study.bus, landing, one.run);
  return landingCard(study, landing, marks.landings.get(one.landing), letter, width, notes);
}

function heightsOf(context: BusContext, drafts: readonly Draft[], top: number): RowHeights[] {
  const { scale, joints } = context;
  const rows: RowHeights[] = [];
  let y = top;
  const count = (drafts.at(-1)?.row ?? -1) + 1;
  const byRow: Draft[][] = Array.from({ length: count }, () => []);
  for (const draft of drafts) byRow[draft.row]?.push(draft);
  for (let row = 0; row < count; row++) {
    const own = byRow[row] ?? [];
    const most = (of: (draft: Draft) => number) => own.reduce((height, draft) => Math.max(height, of(draft)), 0);
    const cards = most(({ hangingCards }) => hangingCards.reduce((height, card) => Math.max(height, card.height), 0));
    const turns = most(({ x, hanging }) => hanging.filter((middle) => 0.5 < Math.abs(middle - x)).length);
    const hanging = y + cards;
    const sides = hanging + (cards ? 20 + (scale ? Math.min(turns, 1) * 20 : turns * tapRail) : 0);
    const labels = sides + most((draft) => draft.sides.height);
    const line = labels + 14 + most(labelHeight);
    const isJointed = own.some(({ stop }) => stop.landing !== undefined && joints.has(stop.landing));
    const below = line + (scale ? 64 : 34) + (isJointed ? jointLead : 0);
    const cardsEnd = below + most(({ drawn }) => drawn.height);
    const areasEnd = cardsEnd + (own.some(({ stop }) => areaOf(context, stop)) ? areaHeight : 0);
    const bottom = areasEnd + (isJointed ? lanesHeight(joints) : 0);
    rows.push({ hanging, sides, labels, line, cards: below, cardsEnd, lanes: areasEnd + 7, bottom });
    y = bottom + 26;
  }
  return rows;
}

const labelHeight = ({ label, sides }: Draft) =>
  Math.max(label?.place === 'line' ? label.height : label?.signs.length ? 18 : 0, sides.endLabel.length * 12 + 4);

function drawRun(context: BusContext, before: Draft, draft: Draft, course: Course, row: RowHeights): Part {
  const { study, marks } = context;
  const { bus } = study;
  const run = draft.stop.run!;
  // The two strokes of another cable would show inside the dots.
  const least = run.cable === bus.cable ? 0 : 4;
  const from: Spot = { x: before.x + Math.max(least, openingOf(before)), row: before.row };
  const to: Spot = { x: draft.x - Math.max(least, openingOf(draft)), row: draft.row };
  const findings = marks.runs.get(run.index) ?? [];
  const shapes: Shape[] = [];
  if (isShielded(run)) {
    const cut = (stop: Stop) => stop.landing === undefined || bus.landings[stop.landing]?.shield === 'open';
    shapes.push(...shieldOf(from, to, { from: cut(before.stop), to: cut(draft.stop) }, course));
  }
  shapes.push(...runLine(run, bus.cable, from, to, course));
  if (run.fuse) shapes.push(...fuseSymbol(from.x + 20, course.lines[from.row] ?? 0));
  if (draft.label) shapes.push(...draft.label.draw(row), ...signs(findings, draft.label.signX, draft.label.signY(row)));
  return runPart(context, run, shapes);
}

/** Lines stop at the rim of an open circle. */
const openingOf = ({ stop }: Draft): number => (stop.landing === undefined || stop.again ? 4.5 : 0);
