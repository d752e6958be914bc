/** A bus's course as lines of text: each `from`, run and tap with what the text says of its landing. */
import type { Bus, DividedLanding, DividedStep, Landing, Place } from '@fieldpair/shared';
import { quote } from '../read/text-value.js';
import { type Commented, withComments } from './comments.js';
import { lengthText, referenceOf } from './phrases.js';
import type { TextChange } from './text-change.js';

/** The statements of a bus that are its course, in the order of the text: what the pen does, and under which headings. */
export function courseStatements(bus: Bus): Place[] {
  const bare = new Set(bareAreas(bus));
  const places = [...bus.pens.map(({ place }) => place), ...bus.runs.map(({ place }) => place)];
  return [...places, ...bus.areas.filter((area) => !bare.has(area))].sort((left, right) => left.start - right.start);
}

/** The headings of areas under which nothing is landed first. */
export const bareAreas = (bus: Bus): Place[] =>
  bus.areas.filter(({ start }) => !bus.landings.some(({ area }) => area?.place.start === start));

/** Where the statements of a bus begin: behind its opening brace. */
export const blockStart = (bus: Bus, text: string): number => {
  const header = bus.cablePlace ?? bus.format?.place ?? bus.rate?.place ?? bus.kindPlace ?? bus.place;
  return text.indexOf('{', header.end) + 1;
};

interface Additions {
  /** Changes of what the mentions of landings say. */
  readonly amendments?: readonly TextChange[];
  /** How a new repeater is landed, where the course leads to one. */
  readonly repeater?: (landing: Exclude<DividedLanding, number>) => string;
}

/**
 * The lines of a course, without indentation. A landing is told with everything that its mentions say of it at its
 * first step, and by its name later; the comments of its statements come with it, and it stays in its area. What `additions` has comes with the new
 * course.
 */
export function courseLines(
  bus: Bus,
  course: readonly DividedStep[],
  text: string,
  { amendments = [], repeater = () => '' }: Additions = {},
): string[] {
  const from = blockStart(bus, text);
  const told = new Set<number>();
  const enter = areaWriter(text, from);
  const lineTo = (step: DividedStep, target: string) =>
    step.step === 'from' ? `from ${target}` : `${runText(bus, step, text)} to ${target}`;
  return course.flatMap((step) => {
    if (typeof step.landing !== 'number') return [lineTo(step, repeater(step.landing))];
    const landing = bus.landings[step.landing];
    if (!landing) return [];
    const isFirst = !told.has(landing.index);
    told.add(landing.index);
    const target = isFirst ? fullLanding(landing, text, amendments) : referenceOf(landing);
    const line = lineTo(step, target);
    if (!isFirst) return [line];
    const statements = landing.visits.map(({ statementPlace }) => withComments(statementPlace, text, from));
    return [...enter(landing), ...withTheirComments(line, statements)];
  });
}

/** Tells of each landing which heading it needs above it, after those that came before; a heading's comments come once. */
function areaWriter(text: string, from: number): (landing: Landing) => string[] {
  let current: string | undefined;
  const written = new Set<number>();
  return ({ area }) => {
    if (area?.value === current) return [];
    current = area?.value;
    const line = `area ${quote(area?.value ?? '')}`;
    if (!area || written.has(area.place.start)) return [line];
    written.add(area.place.start);
    return withTheirComments(text.slice(area.place.start, area.place.end), [withComments(area.place, text, from)]);
  };
}

/** A line below and before the comments of statements. */
export function withTheirComments(line: string, statements: readonly Commented[]): string[] {
  const beside = statements.flatMap((statement) => statement.beside ?? []);
  return [...statements.flatMap(({ above }) => above), [line, ...beside].join(' ')];
}

/** `tap 12 ft on CABLE`, up to where it leads. A length that stays as it was stays as it was written. */
function runText(
  bus: Bus,
  step: { readonly step: 'to' | 'tap'; readonly length: number; readonly run?: number },
  text: string,
): string {
  const run = step.run === undefined ? undefined : bus.runs[step.run];
  const same = run && Math.abs(run.length - step.length) < 1e-6;
  const length = same
    ? text.slice(run.lengthPlace.start, run.lengthPlace.end)
    : lengthText(step.length, bus.lengthUnit);
  return `${step.step === 'tap' ? 'tap ' : ''}${length}${run ? remarksOf(bus, run.index, text, same === true) : ''}`;
}

/** Label and device of a landing, then its properties: how a mention goes on behind the name. */
const saidPattern =
  /^(?<label>"(?:\\.|[^"\\\r\n])*")?\s*(?<device>:\s*(?:"(?:\\.|[^"\\\r\n])*"|\w+))?\s*(?<properties>[\s\S]*)$/;

/** The landing with everything that its mentions say of it: one label and one device, and all properties. */
function fullLanding(landing: Landing, text: string, amendments: readonly TextChange[]): string {
  const said = landing.visits.map(
    ({ referencePlace, place }) =>
      saidPattern.exec(amended(text, referencePlace.end, place.end, amendments).trim())?.groups ?? {},
  );
  const first = (part: 'label' | 'device') => said.find((one) => one[part])?.[part] ?? '';
  const splice = landing.splice === undefined ? '' : 'splice ';
  const head = landing.visits[0];
  const name = head ? text.slice(head.referencePlace.start, head.referencePlace.end) : referenceOf(landing);
  const parts = [splice + name, first('label'), first('device'), ...said.map((one) => one['properties'] ?? '')];
  return parts.filter((part) => part !== '').join(' ');
}

/** A stretch of the text with the changes that lie in it; they come in order and do not overlap. */
function amended(text: string, start: number, end: number, changes: readonly TextChange[]): string {
  let result = '';
  let at = start;
  for (const change of changes) {
    if (change.start < at || end < change.end) continue;
    result += text.slice(at, change.start) + change.text;
    at = change.end;
  }
  return result + text.slice(at, end);
}

/**
 * `on CABLE built LENGTH beside mains fuse CURRENT` of a run, as written; a built length holds only for the run it was
 * taken of.
 */
function remarksOf(bus: Bus, index: number, text: string, keepBuilt: boolean): string {
  const run = bus.runs[index];
  if (!run) return '';
  const cable = run.cablePlace ? ` on ${text.slice(run.cablePlace.start, run.cablePlace.end)}` : '';
  const built = run.built && keepBuilt ? ` ${text.slice(run.built.place.start, run.built.place.end)}` : '';
  const fuse = run.fuse ? ` ${text.slice(run.fuse.place.start, run.fuse.place.end)}` : '';
  return `${cable}${built}${run.besideMains ? ' beside mains' : ''}${fuse}`;
}
