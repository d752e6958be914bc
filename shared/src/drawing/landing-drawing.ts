/** A landing with its lead, its card and what sits on it; and what hangs above it on taps. */

import type { Bus, Landing, Run } from '../network.js';
import { formatOhms } from '../quantity.js';
import type { BusContext } from './bus-drawing.js';
import { signs, signsWidth } from './marks.js';
import { isShielded, shieldReach } from './run-line.js';
import { runPart } from './run-part.js';
import type { Part, Shape } from './scene.js';
import { circle, line, polyline, text } from './shapes.js';
import type { Draft, RowHeights } from './strand-drawing.js';
import {
  biasSymbol,
  contactSymbol,
  crossing,
  earthSymbol,
  endTerminator,
  repeaterSymbol,
  sideTerminator,
} from './symbols.js';
import { fitted } from './text.js';
import { earthName, landingName, nameOf, runLabel, runName } from './words.js';

const sideSize = 10;
/** Between the rails on which taps of one landing turn to their cards. */
export const tapRail = 16;

/** The stop's own part first, then its earths and biases. */
export function drawStop(context: BusContext, draft: Draft, row: RowHeights): [Part, ...Part[]] {
  const { study, page } = context;
  const { stop, x, card } = draft;
  const landing = stop.landing === undefined || stop.again ? undefined : study.bus.landings[stop.landing];
  const shapes: Shape[] = [];
  if (stop.landing !== undefined) shapes.push(leader(context, draft, row));
  const others: Part[] = [];
  if (landing) {
    const biases = drawSides(context, draft, row, shapes);
    others.push(...biases, ...earthsOf(context, landing, x, row.line));
    const rest = landing.port?.contact;
    if (rest) shapes.push(...contactSymbol(card, row.cards - 12, rest));
    if (landing.crossed) shapes.push(...crossing(card, row.cards - 10));
    if (landing.node?.device?.role === 'repeater') shapes.push(repeaterSymbol(card, row.cards - 10));
    const end = draft.sides.end;
    if (end) {
      shapes.push(...endTerminator(end.terminator, x, row.line, end.way));
      const room = page.pitch / 2 - 8;
      for (const [index, label] of draft.sides.endLabel.entries()) {
        const base = row.line - 18 - (draft.sides.endLabel.length - 1 - index) * 12;
        const [shown = ''] = fitted(label, room, sideSize, 1).lines;
        shapes.push(
          text('value', x + end.way * (page.pitch / 4 + 4), base, shown, { size: sideSize, anchor: 'middle' }),
        );
      }
    }
  }
  shapes.push(
    landing && landing.splice === undefined ? circle('dot', x, row.line, 4) : circle('ring-dot', x, row.line, 4),
  );
  // What is said where a run ends needs no lead, so it stands right below.
  shapes.push(...draft.drawn.draw(card, stop.landing === undefined && !context.scale ? row.line + 6 : row.cards));
  return [{ ...stopPart(context, draft), shapes }, ...others];
}

function stopPart({ study, marks, group, keyOf }: BusContext, { stop }: Draft): Omit<Part, 'shapes'> {
  const { bus } = study;
  const landing = stop.landing === undefined ? undefined : bus.landings[stop.landing];
  if (!landing) {
    const name = `nowhere: ${stop.run ? runName(study, stop.run) : ''}`;
    const place = stop.run?.place ?? bus.place;
    return { key: keyOf(`${group} ${name}`), kind: 'again', name, findings: [], group, place, covers: [] };
  }
  if (stop.again) {
    const visit = landing.visits.find(
      ({ statementPlace }) => stop.run && statementPlace.start === stop.run.place.start,
    );
    const place = (visit ?? landing.visits.at(-1))?.referencePlace ?? landing.place;
    const name = `${landing.name} again`;
    return { key: keyOf(`${group} ${name}`), kind: 'again', name, findings: [], group, place, covers: [] };
  }
  return landingPart({ study, marks, group, keyOf }, landing);
}

function landingPart(
  { study, marks, group, keyOf }: Pick<BusContext, 'study' | 'marks' | 'group' | 'keyOf'>,
  landing: Landing,
): Omit<Part, 'shapes'> {
  return {
    key: keyOf(`${group} at ${landing.name}`),
    kind: 'landing',
    name: landingName(study, landing),
    findings: marks.landings.get(landing.index) ?? [],
    group,
    place: landing.visits[0]?.referencePlace ?? landing.place,
    covers: landing.visits.map(({ place }) => place),
    landing: { bus: study.bus.index, index: landing.index },
  };
}

/** From the line down to the card; slanted where the card had to give way. */
function leader({ scale }: BusContext, { x, card }: Draft, row: RowHeights): Shape {
  if (!scale) return line('lead', x, row.line, card, row.cards);
  return polyline('lead', [
    [x, row.line],
    [x, row.line + 18],
    [card, row.cards - 18],
    [card, row.cards],
  ]);
}

/** Adds the lead upward with its terminators to `shapes`; what biases is a part of its own. */
function drawSides(context: BusContext, draft: Draft, row: RowHeights, shapes: Shape[]): Part[] {
  const { study, marks, page, group, keyOf } = context;
  const { x, sides } = draft;
  const parts: Part[] = [];
  let y = row.labels;
  let top = row.line;
  const room = Math.min(context.scale ? page.pitch / 2 - 12 : page.pitch - 34, context.edges.right - x - 14);
  for (const { label, height, terminator, bias } of sides.above) {
    const own: Shape[] = [];
    const symbol = y - 12;
    top = symbol;
    own.push(...(terminator ? sideTerminator(terminator, x, symbol) : biasSymbol(x, symbol)));
    for (const [index, content] of label.entries()) {
      const [shown = ''] = fitted(content, room, sideSize, 1).lines;
      own.push(text('value', x + 6, symbol - 11 - (label.length - 1 - index) * 12, shown, { size: sideSize }));
    }
    if (bias) {
      const findings = marks.biases.get(bias.index) ?? [];
      const name = `bias at ${nameOf(study.bus, bias.bias.landing)}, ${label.slice(1).join(' ')}`;
      own.push(...signs(findings, x - 2 - signsWidth(findings), symbol));
      parts.push({
        key: keyOf(`${group} ${name}`),
        kind: 'bias',
        name,
        findings,
        group,
        place: bias.bias.place,
        covers: [bias.bias.place],
        shapes: own,
      });
    } else {
      shapes.push(...own);
    }
    y -= height;
  }
  if (top < row.line) shapes.push(line('lead', x, row.line, x, top));
  return parts;
}

function earthsOf({ study, marks, group, keyOf }: BusContext, landing: Landing, x: number, y: number): Part[] {
  const here = [...study.bus.earths.entries()].filter(([, earth]) => earth.landing === landing.index);
  return here.map(([index, earth], position) => {
    const { place } = earth;
    const findings = marks.earths.get(index) ?? [];
    const name = earthName(study.bus, earth);
    const left = x - 15 - position * 18;
    return {
      key: keyOf(`${group} ${name}`),
      kind: 'earth',
      name,
      findings,
      group,
      place,
      covers: [place],
      shapes: [
        ...earthSymbol(left, y + shieldReach, earth.through !== undefined),
        ...signs(findings, left - 10 - signsWidth(findings), y + 21),
      ],
    };
  });
}

/** Taps above the line, each its run and its landing. */
export function drawHanging(context: BusContext, draft: Draft, row: RowHeights): Part[] {
  const { study, marks, page, group, keyOf } = context;
  const { bus } = study;
  return draft.stop.hanging.flatMap(({ run, landing: reached, again }, index) => {
    const x = draft.hanging[index] ?? draft.x;
    const card = draft.hangingCards[index];
    if (!card) return [];
    const findings = marks.runs.get(run.index) ?? [];
    const room = page.pitch / 2 - 14 - signsWidth(findings);
    const [label = ''] = fitted(runLabel(study, run).join(', '), room, 10.5, 1).lines;
    const look = run.cable === bus.cable ? 'line' : 'line other';
    const points = tapWay(context, draft, index, row);
    const shapes: Shape[] = isShielded(run) ? tapShield(points) : [];
    shapes.push(polyline(look, points));
    if (look !== 'line') shapes.push(polyline('line core', points));
    shapes.push(text('length', x + 10, row.hanging + 13, label, { size: 10.5 }));
    shapes.push(...signs(findings, x + page.pitch / 2 - 6 - signsWidth(findings), row.hanging + 9));
    const parts: Part[] = [runPart(context, run, shapes)];
    const landing = reached === undefined ? undefined : bus.landings[reached];
    const shown = card.draw(x, row.hanging - card.height);
    if (!landing) {
      parts[0] = { ...parts[0]!, shapes: [...shapes, circle('ring-dot', x, row.hanging, 4), ...shown] };
    } else if (again) {
      const again = `${landing.name} again`;
      parts.push({
        key: keyOf(`${group} ${again}`),
        kind: 'again',
        name: again,
        findings: [],
        group,
        place: run.place,
        covers: [],
        shapes: shown,
      });
    } else {
      parts.push({ ...landingPart(context, landing), shapes: shown });
    }
    return parts;
  });
}

type Point = readonly [number, number];

/**
 * From the landing up to the card of a tap. Evenly, further taps turn right on rails of their own; to scale, where cards
 * may be on either side, they go straight.
 */
function tapWay({ scale }: BusContext, { x, hanging }: Draft, index: number, row: RowHeights): Point[] {
  const to = hanging[index] ?? x;
  if (scale || index === 0) {
    const turn: Point[] =
      Math.abs(to - x) < 0.5
        ? []
        : [
            [x, row.sides],
            [to, row.hanging + 18],
          ];
    return [[x, row.line], ...turn, [to, row.hanging]];
  }
  const rail = row.hanging + 12 + index * tapRail;
  return [
    [x, row.line],
    [x, rail],
    [to, rail],
    [to, row.hanging],
  ];
}

/** Dashes on both sides of a tap, from above the screen of the trunk; they turn with it. */
function tapShield(points: readonly Point[]): Shape[] {
  const isRail = points.length === 4 && points[1]?.[1] === points[2]?.[1];
  return [-shieldReach, shieldReach].map((reach) =>
    polyline(
      'shield',
      points.map(([x, y], index): Point => {
        if (index === 0) return [x + reach, y - shieldReach];
        return [x + reach, isRail && index < 3 ? y + reach : y];
      }),
    ),
  );
}

/** What the card of a hanging landing says instead of symbols, and its area where it is not that of the line below. */
export function hangingNotes(bus: Bus, landing: Landing, run: Run): string[] {
  const notes = landing.terminations.map(({ means, resistance }) => `terminated: ${means} ${formatOhms(resistance)}`);
  if (bus.biases.some((bias) => bias.landing === landing.index)) notes.push('bias here');
  if (bus.earths.some((earth) => earth.landing === landing.index)) notes.push('shield earthed here');
  const below = bus.landings[run.from === landing.index ? (run.to ?? run.from) : run.from];
  if (landing.area && landing.area.value !== below?.area?.value) notes.push(`in ${landing.area.value}`);
  return notes;
}
