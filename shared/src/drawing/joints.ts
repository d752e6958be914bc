/**
 * What joins the places at which one landing is drawn: a thin line from its lead down beside its card, and to where each
 * further stretch of cable begins or arrives. Thin lines mean one landing, as leads do; only cable is drawn broad.
 *
 * Joints run in lanes in the margin, between the cards and below the rows. Two that share rows have lanes of their own, so
 * that none lies on another. The margin and the gaps between the cards have room for five; what is beyond has the
 * letters on the cards alone, as taps have.
 */
import type { LandingIndex } from '../network.js';
import type { BusContext } from './bus-drawing.js';
import type { PlacedStop } from './rows.js';
import type { Part, Shape } from './scene.js';
import { circle, n, path } from './shapes.js';
import { nameOf } from './words.js';

const mostLanes = 5;
/** Between lanes in the margin and below the rows, and between two cards: closer where there are many. */
const pitchOf = (lanes: number) => (lanes <= 3 ? { lane: 5, gutter: 3 } : { lane: 3.6, gutter: 2 });
/** In the middle of the gap, then to its sides in turn. */
const gutterShift = (lane: number) => (lane % 2 ? 1 : -1) * Math.ceil(lane / 2);
/** The open circle at which a drawing goes on. */
const openDot = 4.5;
/** So much longer are the leads of a row from which a joint leaves. */
export const jointLead = 16;
/** How far below the line, or above the card where leads are slanted, a joint leaves its lead. */
const leaving = { evenly: 29, scaled: 18 } as const;

/** A place at which a jointed landing is drawn. */
export interface JointSpot {
  readonly landing: LandingIndex;
  readonly again: boolean;
  /** Whether a strand begins here, so that the joint comes from the margin as the cable would. */
  readonly begins: boolean;
  readonly x: number;
  readonly card: number;
  /** The heights of the line, of the upper side of the card, and of the first lane below the row. */
  readonly line: number;
  readonly cards: number;
  readonly lanes: number;
}

/** The lanes of the landings that are joined by lines, in the order in which they are drawn again. */
export function jointsOf(strands: readonly (readonly PlacedStop[])[]): Map<LandingIndex, number> {
  const extents = new Map<LandingIndex, { first: number; last: number; isDrawn: boolean; again: number }>();
  let above = 0;
  let order = 0;
  for (const stops of strands) {
    for (const { stop, row } of stops) {
      const { landing, again } = stop;
      if (landing === undefined) continue;
      const extent = extents.get(landing) ?? {
        first: above + row,
        last: 0,
        isDrawn: false,
        again: Number.POSITIVE_INFINITY,
      };
      extents.set(landing, extent);
      extent.last = above + row;
      if (again) extent.again = Math.min(extent.again, order);
      else extent.isDrawn = true;
      order++;
    }
    above += (stops.at(-1)?.row ?? -1) + 1;
  }
  const wanted = [...extents].filter(([, { isDrawn, again }]) => isDrawn && again < Number.POSITIVE_INFINITY);
  wanted.sort(([, left], [, right]) => left.again - right.again);
  const joints = new Map<LandingIndex, number>();
  const taken: { first: number; last: number }[][] = Array.from({ length: mostLanes }, () => []);
  for (const [landing, { first, last }] of wanted) {
    const lane = taken.findIndex((others) => others.every((other) => other.last < first || last < other.first));
    if (lane < 0) continue;
    taken[lane]!.push({ first, last });
    joints.set(landing, lane);
  }
  return joints;
}

const lanesOf = (joints: ReadonlyMap<LandingIndex, number>): number => Math.max(-1, ...joints.values()) + 1;

/** How much a row is taller for the lanes below it. */
export const lanesHeight = (joints: ReadonlyMap<LandingIndex, number>): number =>
  7 + lanesOf(joints) * pitchOf(lanesOf(joints)).lane;

/** A part for each jointed landing. */
export function drawJoints(context: BusContext, spots: readonly JointSpot[]): Part[] {
  const { study, group, keyOf } = context;
  return [...context.joints].flatMap(([landing, lane]) => {
    const here = spots.filter((spot) => spot.landing === landing);
    const first = here.find(({ again }) => !again);
    const others = here.filter(({ again }) => again);
    const place = study.bus.landings[landing]?.visits[0]?.referencePlace;
    if (!first || !place || others.length === 0) return [];
    const name = `joint: all ${here.length} places where ${nameOf(study.bus, landing)} is drawn are one landing`;
    const shapes = jointShapes(context, first, others, lane);
    return [{ key: keyOf(`${group} ${name}`), kind: 'joint', name, findings: [], group, place, covers: [], shapes }];
  });
}

function jointShapes(
  { page, scale, joints }: BusContext,
  first: JointSpot,
  others: readonly JointSpot[],
  lane: number,
): Shape[] {
  const pitch = pitchOf(lanesOf(joints));
  const margin = page.left - pitch.lane * (lane + 1);
  const leaves = ({ line, cards }: JointSpot) => (scale ? cards - leaving.scaled : line + leaving.evenly);
  const gutter = ({ card }: JointSpot) => {
    const x = card - page.pitch / 2;
    return x <= page.left + 0.5 ? margin : x + gutterShift(lane) * pitch.gutter;
  };
  const below = ({ lanes }: JointSpot) => lanes + lane * pitch.lane;
  const out = gutter(first);
  const wayTo = (other: JointSpot): string => {
    const start = `M${n(first.card)} ${n(leaves(first))}H${n(out)}`;
    const around = out !== margin && (other.begins || first.lanes !== other.lanes);
    const aside = around ? `V${n(below(first))}H${n(margin)}` : '';
    if (other.begins) return `${start}${aside}V${n(other.line)}H${n(other.x - openDot)}`;
    return `${start}${aside}V${n(below(other))}H${n(gutter(other))}V${n(leaves(other))}H${n(other.card)}`;
  };
  const met = [first, ...others.filter(({ begins }) => !begins)];
  return [
    path('lead', others.map(wayTo).join('')),
    ...met.map((spot) => circle('point', spot.card, leaves(spot), 2.2)),
  ];
}
