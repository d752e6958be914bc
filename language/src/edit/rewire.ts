/** Writes a bus's course anew: all its `from`, runs and taps, with the landings' properties kept. */
import type { Bus, CourseStep, Landing } from '@fieldpair/shared';
import { lineOf, removal } from './lines.js';
import { lengthText, referenceOf } from './phrases.js';
import type { TextChange, TextOf } from './text-change.js';

/** `amendments` are changes of what the landings' mentions say that come with the new course. */
export function rewire(
  bus: Bus,
  course: readonly CourseStep[],
  amendments: readonly TextChange[],
  textOf: TextOf,
): TextChange[] {
  const statements = [...bus.pens.map(({ place }) => place), ...bus.runs.map(({ place }) => place)].sort(
    (left, right) => left.start - right.start,
  );
  const [first, ...others] = statements;
  if (!first) return [];
  const text = textOf(first.file) ?? '';
  const lineEnd = text.includes('\r\n') ? '\r\n' : '\n';
  const told = new Set<number>();
  const lines = course.map((step) => {
    const landing = bus.landings[step.landing];
    if (!landing) return '';
    const target = told.has(landing.index) ? referenceOf(landing) : fullLanding(landing, text, amendments);
    told.add(landing.index);
    if (step.step === 'from') return `from ${target}`;
    const run = step.run === undefined ? undefined : bus.runs[step.run];
    const same = run && Math.abs(run.length - step.length) < 1e-6;
    const length = same
      ? text.slice(run.lengthPlace.start, run.lengthPlace.end)
      : lengthText(step.length, bus.lengthUnit);
    const remarks = run ? remarksOf(bus, run.index, text, same === true) : '';
    return `${step.step === 'tap' ? 'tap ' : ''}${length}${remarks} to ${target}`;
  });
  const { indent } = lineOf(text, first.start);
  return [
    { file: first.file, start: first.start, end: first.end, text: lines.join(`${lineEnd}${indent}`) },
    ...others.map((place) => removal(place, textOf)),
  ];
}

/** The landing with everything that its mentions say of it. */
function fullLanding(landing: Landing, text: string, amendments: readonly TextChange[]): string {
  const said = landing.visits.map(({ referencePlace, place }) =>
    amended(text, referencePlace.end, place.end, amendments).trim(),
  );
  const splice = landing.splice === undefined ? '' : 'splice ';
  const head = landing.visits[0];
  const name = head ? text.slice(head.referencePlace.start, head.referencePlace.end) : referenceOf(landing);
  return [splice + name, ...said.filter((part) => part !== '')].join(' ');
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

/** `on CABLE built LENGTH beside mains` of a run, as written; a built length holds only for the run it was taken of. */
function remarksOf(bus: Bus, index: number, text: string, keepBuilt: boolean): string {
  const run = bus.runs[index];
  if (!run) return '';
  const cable = run.cablePlace ? ` on ${text.slice(run.cablePlace.start, run.cablePlace.end)}` : '';
  const built = run.built && keepBuilt ? ` ${text.slice(run.built.place.start, run.built.place.end)}` : '';
  return `${cable}${built}${run.besideMains ? ' beside mains' : ''}`;
}
