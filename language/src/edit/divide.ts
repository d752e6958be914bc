/** Divides a bus at repeaters: the block of the bus anew, and a block for each new bus behind it. */
import type { Bus, DivideBus, DividedLanding, DividedPart, NewPort, Place, Store } from '@fieldpair/shared';
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

  const writer = new PartWriter(bus, edit, text, start);
  const added = edit.added.map(
    (part) => new Set(part.course.flatMap(({ landing }) => (typeof landing === 'number' ? landing : []))),
  );
  const partOf = ({ landing, common }: Remark) =>
    common ? undefined : landing === undefined ? -1 : added.findIndex((landings) => landings.has(landing));
  const remarksIn = (part: number) => remarks.filter((remark) => (partOf(remark) ?? part) === part);
  const lineEnd = text.includes('\r\n') ? '\r\n' : '\n';
  const outer = lineOf(text, bus.blockPlace.start).indent;
  const block = (inside: readonly string[]) =>
    [...inside.map((line) => `${lineEnd}${outer}  ${line}`), `${lineEnd}${outer}}`].join('');
  const blocks = edit.added.map((part, index) => {
    const { node } = edit.repeaters[part.beyond]!;
    const label = bus.label === undefined ? '' : ` ${quote(`${bus.label}, beyond ${node}`)}`;
    const header = `bus ${nameText(part.name)}${label} : ${headerOf(bus, text)} {`;
    return `${lineEnd}${lineEnd}${outer}${header}${block(writer.lines(part, remarksIn(index)))}`;
  });
  const result = `${block([...writer.lines(edit.kept, remarksIn(-1)), ...rest])}${blocks.join('')}`;
  return [{ file: bus.place.file, start, end: end + 1, text: result }];
}

class PartWriter {
  readonly #bus: Bus;
  readonly #edit: DivideBus;
  readonly #text: string;
  readonly #start: number;

  constructor(bus: Bus, edit: DivideBus, text: string, start: number) {
    this.#bus = bus;
    this.#edit = edit;
    this.#text = text;
    this.#start = start;
  }

  /** The statements of a part: its course, what the bus says of it, and what it needs beside that. */
  lines({ course, anchor, earth, bias }: DividedPart, remarks: readonly Remark[]): string[] {
    const at =
      typeof anchor === 'number' ? referenceOf(this.#bus.landings[anchor]!) : nameText(this.#nodeOf(anchor).node);
    return [
      ...courseLines(this.#bus, course, this.#text, { repeater: (landing) => this.#repeater(landing) }),
      ...remarks.flatMap((remark) => this.#written(remark)),
      ...(earth ? [`shield earthed at ${at}`] : []),
      ...(bias === undefined ? [] : [biasText(at, bias, bias)]),
    ];
  }

  #written({ place }: Remark): string[] {
    const commented = withComments(place, this.#text, this.#start);
    return withTheirComments(this.#text.slice(place.start, place.end), [commented]);
  }

  #nodeOf(landing: Exclude<DividedLanding, number>) {
    return this.#edit.repeaters[landing.repeater]!;
  }

  /** Its device is named on the side that is written first. */
  #repeater(landing: Exclude<DividedLanding, number>): string {
    const repeater = this.#nodeOf(landing);
    const { port, terminator } = repeater[landing.side];
    const device = landing.side === 'near' ? ` : ${nameText(repeater.device)}` : '';
    return `${nameText(repeater.node)}.${nameText(port)}${device}${terminatorText(terminator)}`;
  }
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
