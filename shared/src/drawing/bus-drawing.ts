/** One bus: its heading, its strands one below the other, and what is spare. */
import type { BusStudy } from '../figures/study.js';
import type { Bus, LandingIndex, Run } from '../network.js';
import { metres, metresPerFoot } from '../quantity.js';
import { drawJoints, type JointSpot, jointsOf } from './joints.js';
import { type BusMarks, signs, signsWidth } from './marks.js';
import { cardsPerRow, evenly, type Page, type Placing, toScale } from './rows.js';
import type { Part, Shape } from './scene.js';
import { line, text } from './shapes.js';
import { drawStrand } from './strand-drawing.js';
import { type Stop, type Strand, strandsOf } from './strands.js';
import { fitted, textWidth } from './text.js';
import { busFacts, deviceText, runName } from './words.js';

/** How a drawing is laid out. */
export interface DrawingOptions {
  /** The width of the paper in CSS pixels; 1,120 when unsaid, which is A4 across. */
  readonly width?: number;
  /** Landings stand where the cable has run so far, instead of evenly. */
  readonly scale?: boolean;
}

/** What the parts of a bus have in common while it is drawn. */
export interface BusContext {
  readonly study: BusStudy;
  readonly marks: BusMarks;
  readonly page: Page;
  /** Where lines turn to the next row, outside the cards. */
  readonly edges: { readonly left: number; readonly right: number };
  readonly scale: boolean;
  /** Letters of the landings that are drawn more than once. */
  readonly letters: ReadonlyMap<LandingIndex, string>;
  /** The lanes of those that lines join. */
  readonly joints: ReadonlyMap<LandingIndex, number>;
  /** The key of the bus's own part. */
  readonly group: string;
  /** A key that no other part of the drawing has. */
  readonly keyOf: (wanted: string) => string;
}

export interface Drawn {
  readonly parts: readonly Part[];
  readonly bottom: number;
}

export const margin = 20;
/** Between the edge of the paper's margin and the cards, for lines that turn. */
const turningRoom = 22;
/** Cards are as wide as the names of the bus ask for, within these. */
const pitches = { least: 126, most: 178 } as const;
/** So much wider may they become to fill a row. */
const spareWidth = 40;

export function drawBus(
  study: BusStudy,
  marks: BusMarks,
  top: number,
  options: Required<DrawingOptions>,
  keyOf: (wanted: string) => string,
): Drawn {
  const { bus } = study;
  const group = keyOf(`bus ${bus.name}`);
  const edges = { left: margin, right: options.width - margin };
  const page = pageOf(bus, edges.left + turningRoom, edges.right - turningRoom);
  const strands = strandsOf(bus, study.shape, cardsPerRow(page));
  const isLaden = ({ landing, again }: Stop) =>
    landing !== undefined &&
    !again &&
    (bus.landings[landing]?.terminations.length !== 0 || bus.biases.some((bias) => bias.landing === landing));
  const scaled = options.scale ? toScale(page, strands, isLaden) : undefined;
  const place: Placing = scaled?.place ?? evenly(page);
  const placed = strands.map(place);
  const context: BusContext = {
    study,
    marks,
    page,
    edges,
    scale: scaled !== undefined,
    letters: lettersOf(strands),
    joints: jointsOf(placed),
    group,
    keyOf,
  };
  const facts = busFacts(study);
  if (options.scale && !scaled && 0 < strands.length) facts.push('not to scale: its lengths are too unlike');
  const heading = drawHeading(context, facts, top, scaled?.pixelsPerMetre);
  const parts: Part[] = [heading.part];
  let bottom = heading.bottom;
  const spots: JointSpot[] = [];
  for (const [index, strand] of strands.entries()) {
    const drawn = drawStrand(context, strand, placed[index]!, bottom + 10);
    parts.push(...drawn.parts);
    spots.push(...drawn.spots);
    bottom = drawn.bottom;
  }
  parts.push(...drawJoints(context, spots));
  for (const run of bus.runs) {
    if (!run.spare) continue;
    parts.push(drawSpare(context, run, bottom + 18));
    bottom += 20;
  }
  return { parts, bottom };
}

/**
 * Cards wide enough for the longest name and the longest device in one line, as far as that goes, and so wide that full
 * rows fill the page.
 */
function pageOf(bus: Bus, left: number, right: number): Page {
  let widest = 0;
  for (const landing of bus.landings) {
    const name = textWidth(landing.name.slice(0, 40), 12, true) + 18;
    widest = Math.max(widest, name, textWidth(deviceText(landing).slice(0, 40), 10));
  }
  const asked = Math.min(pitches.most, Math.max(pitches.least, Math.ceil(widest) + 30));
  const filling = Math.floor((right - left) / cardsPerRow({ left, right, pitch: asked }));
  return { left, right, pitch: Math.min(filling, asked + spareWidth) };
}

/** A, B … Z, AA … for the landings that are shown again, in the order in which that happens. */
function lettersOf(strands: readonly Strand[]): Map<LandingIndex, string> {
  const letters = new Map<LandingIndex, string>();
  const shown = strands.flatMap(({ stops }) => stops.flatMap((stop) => [stop, ...stop.hanging]));
  for (const { landing, again } of shown) {
    if (!again || landing === undefined || letters.has(landing)) continue;
    letters.set(landing, letterOf(letters.size));
  }
  return letters;
}

function letterOf(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : letterOf(Math.floor(index / 26) - 1) + letter;
}

function drawHeading(
  { study, marks, page, edges, group }: BusContext,
  facts: readonly string[],
  top: number,
  pixelsPerMetre: number | undefined,
): { part: Part; bottom: number } {
  const { bus } = study;
  const room = page.right - page.left;
  const barRoom = pixelsPerMetre === undefined ? 0 : 190;
  const [name = ''] = fitted(bus.name, room * 0.5, 15, 1, true).lines;
  const nameWidth = textWidth(name, 15, true);
  const left = page.left + nameWidth + 12;
  const signRoom = signsWidth(marks.bus);
  const shapes: Shape[] = [
    line('rule', edges.left, top, edges.right, top),
    text('title', page.left, top + 24, name, { size: 15, bold: true }),
  ];
  if (bus.label !== undefined) {
    const [label = ''] = fitted(bus.label, page.right - left - signRoom - 12 - barRoom, 12, 1).lines;
    shapes.push(text('quiet', left + (signRoom ? signRoom + 6 : 0), top + 24, label, { size: 12 }));
  }
  shapes.push(...signs(marks.bus, left, top + 19));
  let base = top + 27;
  for (const fact of fitted(facts.join(' · '), room - barRoom, 11, 3).lines) {
    base += 15;
    shapes.push(text('quiet', page.left, base, fact, { size: 11 }));
  }
  if (pixelsPerMetre !== undefined) shapes.push(...scaleBar(study, page.right, top + 34, pixelsPerMetre));
  const part: Part = {
    key: group,
    kind: 'bus',
    name: [`bus ${bus.name}`, ...(bus.label === undefined ? [] : [bus.label]), ...facts].join(', '),
    findings: marks.bus,
    group,
    place: bus.place,
    covers: [bus.place],
    shapes,
  };
  return { part, bottom: base + 6 };
}

/** A round length, as long as the paper has it. */
function scaleBar({ bus, lengthText }: BusStudy, right: number, y: number, pixelsPerMetre: number): Shape[] {
  const unit = bus.lengthUnit === 'ft' ? metresPerFoot : 1;
  const most = 130 / (pixelsPerMetre * unit);
  const power = 10 ** Math.floor(Math.log10(most));
  const round = [5, 2, 1].find((one) => one * power <= most) ?? 1;
  const length = metres(round * power * unit);
  const left = right - length * pixelsPerMetre;
  return [
    line('thin', left, y, right, y),
    line('thin', left, y - 4, left, y + 4),
    line('thin', right, y - 4, right, y + 4),
    text('quiet', right, y - 7, lengthText(length), { size: 10, anchor: 'end' }),
  ];
}

function drawSpare({ study, marks, page, group, keyOf }: BusContext, run: Run, y: number): Part {
  const findings = marks.runs.get(run.index) ?? [];
  const name = runName(study, run);
  const room = signsWidth(findings);
  const [shown = ''] = fitted(name, page.right - page.left - 80 - room, 10.5, 1).lines;
  return {
    key: keyOf(`${group} ${name}`),
    kind: 'spare',
    name,
    findings,
    group,
    place: run.lengthPlace,
    covers: [run.place],
    shapes: [
      line('spare', page.left, y, page.left + 60, y),
      ...signs(findings, page.left + 66, y),
      text('quiet', page.left + 70 + room, y + 3.5, shown, { size: 10.5 }),
    ],
  };
}
