/** Writes a bus's course anew: all its `from`, runs and taps, with the landings' properties and comments kept. */
import type { Bus, CourseStep, Place } from '@fieldpair/shared';
import { withComments } from './comments.js';
import { blockStart, courseLines, courseStatements } from './course.js';
import { lineOf, removal } from './lines.js';
import type { TextChange, TextOf } from './text-change.js';

/** `amendments` are changes of what the landings' mentions say that come with the new course. */
export function rewire(
  bus: Bus,
  course: readonly CourseStep[],
  amendments: readonly TextChange[],
  textOf: TextOf,
): TextChange[] {
  const text = textOf(bus.place.file) ?? '';
  const from = blockStart(bus, text);
  const [first, ...others] = stretches(
    courseStatements(bus).map((place) => withComments(place, text, from).place),
    text,
  );
  if (!first) return [];
  const lineEnd = text.includes('\r\n') ? '\r\n' : '\n';
  const { indent } = lineOf(text, first.start);
  const lines = courseLines(bus, course, text, { amendments });
  return [
    { file: first.file, start: first.start, end: first.end, text: lines.join(`${lineEnd}${indent}`) },
    ...others.map((place) => removal(place, textOf)),
  ];
}

/** Places in the order of the text, those with nothing between them as one. */
function stretches(places: readonly Place[], text: string): Place[] {
  const joined: Place[] = [];
  for (const place of places) {
    const last = joined.at(-1);
    if (last && text.slice(last.end, place.start).trim() === '')
      joined[joined.length - 1] = { ...last, end: place.end };
    else joined.push(place);
  }
  return joined;
}
