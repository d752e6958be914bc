/** Areas of the store: a bracket below the cards of neighbours that lie in one, with its name, on each row anew. */
import type { Sourced } from '../network.js';
import type { BusContext } from './bus-drawing.js';
import type { Part, Shape } from './scene.js';
import { n, path, text } from './shapes.js';
import type { Stop } from './strands.js';
import { fitted } from './text.js';
import { areaName } from './words.js';

/** How much a row with areas is taller. */
export const areaHeight = 23;
const size = 11;
const tick = 4;

/** A stop on its row, as far as areas care. */
export interface AreaSpot {
  readonly stop: Stop;
  readonly row: number;
  readonly card: number;
}

export const areaOf = ({ study }: BusContext, { landing, again }: Stop): Sourced<string> | undefined =>
  landing === undefined || again ? undefined : study.bus.landings[landing]?.area;

/** Neighbours in one area. */
interface Group {
  readonly area: Sourced<string>;
  readonly members: AreaSpot[];
}

/**
 * A part for each group of neighbours.
 *
 * @param cardsEnd the lower side of the cards, by row
 * @returns each part with the place in `spots` of its first member, which it comes before in walking order
 */
export function drawAreas(
  context: BusContext,
  spots: readonly AreaSpot[],
  cardsEnd: readonly number[],
): Map<number, Part> {
  const parts = new Map<number, Part>();
  let group: Group | undefined;
  let first = 0;
  const end = () => {
    if (group) parts.set(first, areaPart(context, group, cardsEnd));
    group = undefined;
  };
  for (const [index, spot] of spots.entries()) {
    const area = areaOf(context, spot.stop);
    if (area?.value !== group?.area.value) end();
    if (!area) continue;
    if (!group) {
      group = { area, members: [] };
      first = index;
    }
    group.members.push(spot);
  }
  end();
  return parts;
}

function areaPart(context: BusContext, { area, members }: Group, cardsEnd: readonly number[]): Part {
  const { study, group, keyOf } = context;
  const landings = members.flatMap(({ stop }) => [
    ...(stop.landing === undefined ? [] : [stop.landing]),
    ...stop.hanging.flatMap(({ landing, again }) => (landing === undefined || again ? [] : [landing])),
  ]);
  const inside = landings.filter((one) => study.bus.landings[one]?.area?.value === area.value);
  const rows = [...new Set(members.map(({ row }) => row))];
  const shapes = rows.flatMap((row) => {
    const onRow = members.filter((one) => one.row === row);
    const goesOn = { from: row !== rows[0], to: row !== rows.at(-1) };
    return bracket(context, area.value, onRow, (cardsEnd[row] ?? 0) + 5, goesOn);
  });
  const name = areaName(area.value, inside.length);
  return {
    key: keyOf(`${group} area ${area.value}`),
    kind: 'area',
    name,
    findings: [],
    group,
    place: area.place,
    covers: [area.place],
    shapes,
  };
}

/** Open at the side where the area goes on in another row. */
function bracket(
  { page, joints }: BusContext,
  name: string,
  members: readonly AreaSpot[],
  y: number,
  goesOn: { readonly from: boolean; readonly to: boolean },
): Shape[] {
  const half = page.pitch / 2 - 6;
  const left = (members[0]?.card ?? 0) - half;
  const right = (members.at(-1)?.card ?? 0) + half;
  const start = goesOn.from ? `M${n(left)} ${n(y + tick)}` : `M${n(left)} ${n(y)}v${tick}`;
  const end = goesOn.to ? '' : `v${-tick}`;
  // Joints go down between cards.
  const room = joints.size ? 2 * half : right - left;
  const [shown = ''] = fitted(name, room - 4, size, 1).lines;
  return [path('thin', `${start}H${n(right)}${end}`), text('area', left + 2, y + tick + 12, shown, { size })];
}
