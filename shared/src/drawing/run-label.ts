/** Where a run's length and remarks stand: above its line where there is room, else above the gap between two cards. */

import type { Finding } from '../finding.js';
import type { Run } from '../network.js';
import type { BusContext } from './bus-drawing.js';
import { signsWidth } from './marks.js';
import type { PlacedStop } from './rows.js';
import { shieldReach } from './run-line.js';
import type { Shape } from './scene.js';
import { text } from './shapes.js';
import type { RowHeights } from './strand-drawing.js';
import { fitted, textWidth } from './text.js';
import { runLabel } from './words.js';

export interface RunLabel {
  readonly place: 'line' | 'gap';
  readonly height: number;
  readonly signs: readonly Finding[];
  readonly signX: number;
  signY(row: RowHeights): number;
  draw(row: RowHeights): Shape[];
}

const size = 10.5;
const lineHeight = 12;
const signHeight = 18;

export function runLabelOf(context: BusContext, run: Run, from: PlacedStop, to: PlacedStop): RunLabel {
  const { study, marks, page, edges, scale, joints } = context;
  const signs = marks.runs.get(run.index) ?? [];
  const start = from.row === to.row ? from.x : edges.left + 8;
  const room = to.x - start - 14;
  const lines = runLabel(study, run);
  const widest = lines.reduce((most, line) => Math.max(most, textWidth(line, size)), signsWidth(signs));
  if (scale && room < widest) {
    const gap = to.card - page.pitch / 2;
    const isJointed = to.stop.landing !== undefined && joints.has(to.stop.landing);
    return isJointed ? besideJoint(lines, gap, page.pitch / 2 - 24, signs) : inGap(lines, gap, page.pitch - 40, signs);
  }
  const shown = lines.flatMap((line, index) => fitted(line, room, size, index === 0 ? 1 : 2).lines);
  const x = (start + to.x) / 2;
  const height = shown.length * lineHeight + (signs.length ? signHeight : 0);
  const base = (row: RowHeights) => row.line - shieldReach - 5;
  return {
    place: 'line',
    height,
    signs,
    signX: x - signsWidth(signs) / 2,
    signY: (row) => base(row) - shown.length * lineHeight - 6,
    draw: (row) =>
      shown.map((line, index) =>
        text(index === 0 ? 'length' : 'quiet', x, base(row) - (shown.length - 1 - index) * lineHeight, line, {
          size,
          anchor: 'middle',
        }),
      ),
  };
}

/** Between a joint, which goes down through the gap, and the lead of the card. */
function besideJoint(lines: readonly string[], gap: number, room: number, signs: readonly Finding[]): RunLabel {
  const middle = gap + 10 + room / 2;
  return inGap(lines, middle, room, signs);
}

/** Above the gap to the left of a card there is room for one line; its title has the rest. */
function inGap(lines: readonly string[], x: number, room: number, signs: readonly Finding[]): RunLabel {
  const beside = signsWidth(signs);
  const [shown = ''] = fitted(lines.join(', '), room - beside, size, 1).lines;
  return {
    place: 'gap',
    height: 0,
    signs,
    signX: x - room / 2,
    signY: (row) => row.cards - 9,
    draw: (row) => [text('length', x + beside / 2, row.cards - 5, shown, { size, anchor: 'middle' })],
  };
}
