/** The line of a run and its screen, along one row or from the end of a row to the start of the next. */
import type { Run } from '../network.js';
import type { Shape } from './scene.js';
import { n, path } from './shapes.js';

/** A point of a strand's line; `row` counts within the strand. */
export interface Spot {
  readonly x: number;
  readonly row: number;
}

/** Where the lines of a strand's rows are, and where they turn. */
export interface Course {
  /** The height of the line, by row. */
  readonly lines: readonly number[];
  /** The height at which the line goes back, by the row that it leaves. */
  readonly returns: readonly number[];
  readonly left: number;
  readonly right: number;
}

const turn = 8;
/** Half the distance between the dashes of a screen. */
export const shieldReach = 6.5;
/** How far a cut screen stays away from its landing. */
const cutBack = 10;

/** Straight pieces of a way from one spot to another: on each row one, from left to right. */
export function piecesOf(
  from: Spot,
  to: Spot,
  { lines, left, right }: Course,
): { x1: number; x2: number; y: number; row: number }[] {
  const pieces = [];
  for (let row = from.row; row <= to.row; row++) {
    const x1 = row === from.row ? from.x : left + turn;
    const x2 = row === to.row ? to.x : right - turn;
    pieces.push({ x1, x2, y: lines[row] ?? 0, row });
  }
  return pieces;
}

export const isShielded = ({ cable }: Run): boolean => cable?.shield !== undefined && cable.shield !== 'none';

export function runLine(run: Run, busCable: Run['cable'], from: Spot, to: Spot, course: Course): Shape[] {
  let d = '';
  for (const { x1, x2, y, row } of piecesOf(from, to, course)) {
    d += row === from.row ? `M${n(x1)} ${n(y)}H${n(x2)}` : `H${n(x2)}`;
    if (row < to.row) d += turns(y, course.returns[row] ?? y, course.lines[row + 1] ?? y, course);
  }
  if (run.cable === busCable) return [path('line', d)];
  return [path('line other', d), path('line core', d)];
}

/** Down at the right side, back to the left, down to the next row's line: without lifting the pen. */
function turns(y: number, back: number, next: number, { left, right }: Course): string {
  return (
    `Q${n(right)} ${n(y)} ${n(right)} ${n(y + turn)}V${n(back - turn)}Q${n(right)} ${n(back)} ${n(right - turn)} ${n(back)}` +
    `H${n(left + turn)}Q${n(left)} ${n(back)} ${n(left)} ${n(back + turn)}V${n(next - turn)}Q${n(left)} ${n(next)} ${n(left + turn)} ${n(next)}`
  );
}

/** Dashes on both sides of a run, closed where the screen is cut. */
export function shieldOf(from: Spot, to: Spot, cut: { from: boolean; to: boolean }, course: Course): Shape[] {
  return piecesOf(from, to, course).map(({ x1, x2, y, row }) => {
    const isFirst = row === from.row;
    const isLast = row === to.row;
    const start = isFirst && cut.from ? Math.min(x1 + cutBack, (x1 + x2) / 2) : x1;
    const end = isLast && cut.to ? Math.max(x2 - cutBack, (x1 + x2) / 2) : x2;
    const [top, bottom] = [n(y - shieldReach), n(y + shieldReach)];
    let d = `M${n(start)} ${top}H${n(end)}M${n(start)} ${bottom}H${n(end)}`;
    if (isFirst && cut.from) d += `M${n(start)} ${top}V${bottom}`;
    if (isLast && cut.to) d += `M${n(end)} ${top}V${bottom}`;
    return path('shield', d);
  });
}
