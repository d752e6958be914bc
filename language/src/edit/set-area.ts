/** Puts a landing under the heading of another area, and leaves what was under its old one there. */
import type { Bus, Landing, Place } from '@fieldpair/shared';
import { quote } from '../read/text-value.js';
import { withComments } from './comments.js';
import { blockStart } from './course.js';
import { lineOf } from './lines.js';
import { insert, replace, type TextChange, type TextOf } from './text-change.js';

const heading = (area: string) => `area ${quote(area)}`;

/** The changes; none for a landing that is under no heading. */
export function setArea(bus: Bus, landing: Landing, area: string, textOf: TextOf): TextChange[] {
  const own = landing.visits[0]?.statementPlace;
  const old = landing.area;
  if (!own || !old) return [];
  const text = textOf(own.file) ?? '';
  const next = bus.areas.find(({ start }) => old.place.end <= start) ?? bus.endPlace;
  const under = [...bus.pens, ...bus.runs]
    .map(({ place }) => place)
    .filter(({ start }) => old.place.end <= start && start < next.start)
    .sort((left, right) => left.start - right.start);
  const [first] = under;
  const after = under.find(({ start }) => own.end <= start);
  const before = (statement: Place, line: string): TextChange => {
    const { start } = withComments(statement, text, blockStart(bus, text)).place;
    const lineEnd = text.includes('\r\n') ? '\r\n' : '\n';
    return insert(own.file, start, `${line}${lineEnd}${lineOf(text, start).indent}`);
  };
  return [
    first?.start === own.start ? replace(old.place, heading(area)) : before(own, heading(area)),
    ...(after ? [before(after, heading(old.value))] : []),
  ];
}
