/** Divides a bus in two at a repeater: the block of the bus anew, and a block for the new bus behind it. */
import type { Bus, DivideBus, NewPort, Place, Store } from '@fieldpair/shared';
import { nameText } from '../build/suggest.js';
import { quote } from '../read/text-value.js';
import { withComments } from './comments.js';
import { bareAreas, blockStart, courseLines, courseStatements, withTheirComments } from './course.js';
import { lineOf } from './lines.js';
import { biasText, referenceOf, resistorText } from './phrases.js';
import type { TextChange, TextOf } from './text-change.js';

/** A statement that is no part of the course, and the landing that it speaks of. */
interface Remark {
  readonly place: Place;
  readonly landing?: number | undefined;
  /** It holds for the bus as a whole, so for both parts. */
  readonly common?: boolean;
}

/** The change; none where the block holds text that the network does not know, which would be lost. */
export function divide(store: Store, bus: Bus, edit: DivideBus, textOf: TextOf): TextChange[] {
  const text = textOf(bus.place.file) ?? '';
  const opening = blockStart(bus, text);
  // A comment behind the opening brace stays there.
  const start = opening + (/^[ \t]*(\/\/[^\r\n]*)?/.exec(text.slice(opening))?.[0].length ?? 0);
  const end = bus.endPlace.start;
  const remarks = remarksOf(store, bus);
  const rest = restOf(text, start, end, [...courseStatements(bus), ...remarks.map(({ place }) => place)]);
  if (rest === undefined) return [];

  const { near, far, node, device } = edit.repeater;
  const kept = new Set(edit.kept.flatMap(({ landing }) => (landing === 'repeater' ? [] : [landing])));
  const stays = ({ landing, common }: Remark) => common || landing === undefined || kept.has(landing);
  const written = ({ place }: Remark) => {
    const commented = withComments(place, text, start);
    return withTheirComments(text.slice(place.start, place.end), [commented]);
  };
  const repeaterOf = ({ port, terminator }: NewPort, declared: string) =>
    `${nameText(node)}.${nameText(port)}${declared}${terminatorText(terminator)}`;
  const anchor = (landing: number) => referenceOf(bus.landings[landing]!);
  const keptLines = [
    ...courseLines(bus, edit.kept, text, { repeater: repeaterOf(near, ` : ${nameText(device)}`) }),
    ...remarks.filter(stays).flatMap(written),
    ...(edit.keptEarth === undefined ? [] : [`shield earthed at ${anchor(edit.keptEarth)}`]),
    ...(edit.keptBias ? [biasText(anchor(edit.keptBias.landing), edit.keptBias.resistor, edit.keptBias.resistor)] : []),
    ...rest,
  ];
  const addedLines = [
    ...courseLines(bus, edit.added, text, { repeater: repeaterOf(far, '') }),
    ...remarks.filter((remark) => remark.common || !stays(remark)).flatMap(written),
    ...(edit.addedEarth ? [`shield earthed at ${nameText(node)}`] : []),
    ...(edit.addedBias === undefined ? [] : [biasText(nameText(node), edit.addedBias, edit.addedBias)]),
  ];
  const lineEnd = text.includes('\r\n') ? '\r\n' : '\n';
  const outer = lineOf(text, bus.blockPlace.start).indent;
  const block = (inside: readonly string[]) =>
    [...inside.map((line) => `${lineEnd}${outer}  ${line}`), `${lineEnd}${outer}}`].join('');
  const label = bus.label === undefined ? '' : ` ${quote(`${bus.label}, beyond ${node}`)}`;
  const header = `bus ${nameText(edit.name)}${label} : ${headerOf(bus, text)} {`;
  const result = `${block(keptLines)}${lineEnd}${lineEnd}${outer}${header}${block(addedLines)}`;
  return [{ file: bus.place.file, start, end: end + 1, text: result }];
}

/** Everything of a bus beside its course. */
function remarksOf(store: Store, bus: Bus): Remark[] {
  const remarks: Remark[] = [
    ...bus.earths,
    ...bus.biases.filter(({ place }) => inside(place, bus)),
    ...bareAreas(bus).map((place) => ({ place })),
    ...(bus.ambient ? [{ place: bus.ambient.place, common: true }] : []),
    ...(bus.colours ? [{ place: bus.colours.place, common: true }] : []),
  ];
  for (const { place, at } of store.waivers) {
    if (!inside(place, bus)) continue;
    remarks.push({ place, landing: bus.landings.find(({ node, splice }) => (splice ?? node?.name) === at)?.index });
  }
  return remarks.sort((left, right) => left.place.start - right.place.start);
}

/** A bias that is fixed in a device has its place in the course. */
const inside = (place: Place, bus: Bus) =>
  place.file === bus.blockPlace.file &&
  bus.blockPlace.start < place.start &&
  place.end < bus.blockPlace.end &&
  !bus.landings.some((landing) => landing.place.start === place.start);

/** The comments that belong to no statement; undefined where there is anything else between the statements. */
function restOf(text: string, start: number, end: number, statements: readonly Place[]): string[] | undefined {
  let at = start;
  let between = '';
  const places = statements.map((place) => withComments(place, text, start).place);
  for (const place of places.sort((left, right) => left.start - right.start)) {
    between += `${text.slice(at, place.start)}\n`;
    at = place.end;
  }
  between += text.slice(at, end);
  const comments = between.match(/\/\*[\s\S]*?\*\/|\/\/[^\r\n]*/g) ?? [];
  const words = between.replace(/\/\*[\s\S]*?\*\/|\/\/[^\r\n]*/g, '').trim();
  return words === '' ? comments.map((comment) => comment.trimEnd()) : undefined;
}

/** `modbus-rtu 19200 8E1 on Pair22`, as written. */
function headerOf(bus: Bus, text: string): string {
  const last = bus.cablePlace ?? bus.format?.place ?? bus.rate?.place ?? bus.kindPlace;
  return bus.kindPlace && last ? text.slice(bus.kindPlace.start, last.end) : '';
}

function terminatorText(terminator: NewPort['terminator']): string {
  if (terminator === 'fixed') return '';
  return terminator === 'switch' ? ' terminate switch' : ` ${resistorText(terminator)}`;
}
