/**
 * What joins the places at which one landing is drawn: a thin line from its lead down beside its card, and to where each
 * further stretch of cable begins or arrives. Thin lines mean one landing, as leads do; only cable is drawn broad.
 *
 * Each landing has a lane of its own in the margin and below the rows, so that no two joints lie on each other. There is
 * room for a few; what is beyond has the letters on the cards alone, as taps have.
 */
import type { LandingIndex } from '../network.js';
import type { BusContext } from './bus-drawing.js';
import type { Part, Shape } from './scene.js';
import { circle, n, path } from './shapes.js';
import type { Strand } from './strands.js';
import { nameOf } from './words.js';

const mostLanes = 3;
const lanePitch = 5;
/** Where lanes go down between two cards, from the middle of the gap. */
const gutterShifts = [0, 3, -3] as const;
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
export function jointsOf(strands: readonly Strand[]): Map<LandingIndex, number> {
  const stops = strands.flatMap((strand) => strand.stops);
  const drawn = new Set(stops.flatMap(({ landing, again }) => (landing === undefined || again ? [] : [landing])));
  const joints = new Map<LandingIndex, number>();
  for (const { landing, again } of stops) {
    if (!again || landing === undefined || !drawn.has(landing) || joints.has(landing)) continue;
    if (joints.size < mostLanes) joints.set(landing, joints.size);
  }
  return joints;
}

/** How much a row is taller for the lanes below it. */
export const lanesHeight = (joints: ReadonlyMap<LandingIndex, number>): number => 7 + joints.size * lanePitch;

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
  { page, scale }: BusContext,
  first: JointSpot,
  others: readonly JointSpot[],
  lane: number,
): Shape[] {
  const margin = page.left - lanePitch * (lane + 1);
  const leaves = ({ line, cards }: JointSpot) => (scale ? cards - leaving.scaled : line + leaving.evenly);
  const gutter = ({ card }: JointSpot) => {
    const x = card - page.pitch / 2;
    return x <= page.left + 0.5 ? margin : x + (gutterShifts[lane] ?? 0);
  };
  const below = ({ lanes }: JointSpot) => lanes + lane * lanePitch;
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
