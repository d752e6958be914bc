/**
 * Moves a landing to another place of its bus, as somebody does who drags it there in the drawing.
 *
 * Its line of text moves, with the comments above and behind it and with what hangs at it; nothing else is rewritten, so
 * that a diff shows one line that moved. Lengths are kept as they are written, because a text cannot tell how far apart
 * two landings are that no cable has joined yet. Each run that leads between other landings than before gets a remark
 * that it is to be measured again.
 */
import type { Bus, LandingIndex, Place, Run } from '@fieldpair/shared';
import type { TextChange, TextOf } from './text-change.js';

/** What stands behind a length that was taken between other landings. */
export const staleLengthRemark = 'length to be measured again';

/** The changes, or one line that says why there are none. */
export type Move =
  | { readonly changes: readonly TextChange[]; readonly remeasured: number }
  | { readonly refused: string };

/** A statement that moves the pen, with all lines that go where it goes. */
interface Block {
  readonly landing: LandingIndex;
  /** `from`, or `38 ft on CABLE to`: what comes before the landing. */
  readonly lead: Place;
  readonly run: Run | undefined;
  /** The statement itself, without what hangs at it. */
  readonly statement: Place;
  /** Whole lines: comments above, the statement, what hangs at it. */
  start: number;
  end: number;
}

/** @param after the landing that it comes behind, or undefined to become the first of the bus */
export function moveLanding(bus: Bus, landing: LandingIndex, after: LandingIndex | undefined, textOf: TextOf): Move {
  const moved = bus.landings[landing];
  const name = moved?.name ?? 'it';
  const text = textOf(bus.blockPlace.file);
  if (!moved || text === undefined) return { refused: 'The drawing is older than the text.' };
  if (moved.visits.length !== 1) {
    return { refused: `${name} is landed at ${moved.visits.length} places of the text, so it has to be moved there.` };
  }
  const tap = bus.runs.find((run) => run.tap && run.to === landing);
  const apart = bus.areas.find(({ start }) => splitsOff(bus, landing, start));
  if (apart)
    return { refused: `An area begins between ${name} and what hangs at it, so it has to be moved in the text.` };
  const strokes = strokesOf(bus, text);
  if (!strokes) return { refused: `A line of bus ${bus.name} holds several statements; give each its own line first.` };
  const target = after === undefined ? strokes[0]?.[0] : ownerOf(bus, strokes, after);
  if (!target)
    return { refused: `The place behind ${bus.landings[after ?? 0]?.name ?? 'it'} is not on a line of its own.` };
  return tap
    ? moveTap(bus, tap, target, after === undefined, text)
    : moveBlock(bus, landing, strokes, target, after === undefined, text);
}

/** Whether a heading stands between a landing and a run that hangs at it, whose lines would move together. */
function splitsOff(bus: Bus, landing: LandingIndex, heading: number): boolean {
  const start = bus.landings[landing]?.visits[0]?.statementPlace.start ?? heading;
  return bus.runs.some(
    (run) => run.from === landing && (run.tap || run.spare) && start < heading && heading < run.place.start,
  );
}

/** The block that a landing is in, or that it hangs at. */
function ownerOf(bus: Bus, strokes: readonly Block[][], landing: LandingIndex): Block | undefined {
  const own = strokes.flat().find((block) => block.landing === landing);
  if (own) return own;
  const tap = bus.runs.find((run) => run.tap && run.to === landing);
  return tap && strokes.flat().find((block) => block.landing === tap.from);
}

/** The bus as the pen walks it; undefined when a line holds more than one statement. */
function strokesOf(bus: Bus, text: string): Block[][] | undefined {
  const pens = bus.pens.map(({ landing, place }) => ({ landing, place, run: undefined as Run | undefined }));
  const runs = bus.runs.map((run) => ({ landing: run.to, place: run.place, run: run as Run | undefined }));
  const statements = [...pens, ...runs].sort((left, right) => left.place.start - right.place.start);
  const strokes: Block[][] = [];
  let block: Block | undefined;
  let lastEnd = -1;
  for (const { landing, place, run } of statements) {
    const start = lineStart(text, place.start);
    const end = lineEnd(text, place.end);
    if (start < lastEnd || text.slice(start, place.start).trim() !== '' || !isRemark(text.slice(place.end, end)))
      return undefined;
    lastEnd = end;
    const movesPen = landing !== undefined && !(run && (run.tap || run.spare));
    if (!movesPen) {
      if (block) block.end = end;
      continue;
    }
    const visit = bus.landings[landing]?.visits.find(({ statementPlace }) => statementPlace.start === place.start);
    if (!visit) return undefined;
    const lead = { ...place, end: visit.place.start };
    block = { landing, lead, run, statement: place, start: withRemarks(text, start), end };
    if (!run) strokes.push([]);
    strokes.at(-1)?.push(block);
  }
  return strokes;
}

function moveBlock(
  bus: Bus,
  landing: LandingIndex,
  strokes: Block[][],
  target: Block,
  toFront: boolean,
  text: string,
): Move {
  const from = strokes.find((stroke) => stroke.some((block) => block.landing === landing));
  const to = strokes.find((stroke) => stroke.includes(target));
  const block = from?.find((one) => one.landing === landing);
  const name = bus.landings[landing]?.name ?? 'it';
  if (!from || !to || !block) return { refused: `${name} is not on a line of its own.` };
  if (from !== to && from[0] === block && 1 < from.length) {
    return { refused: `A stretch of the bus begins at ${name}; move the others to it instead.` };
  }
  if (from.length === 1) return { refused: `No cable leads to ${name}, so there is no length to take along.` };
  const before = new Map(strokes.map((stroke) => [stroke, [...stroke]]));
  const rest = from.filter((one) => one !== block);
  const base = from === to ? rest : to;
  const position = toFront ? 0 : from === to && target === block ? from.indexOf(block) : base.indexOf(target) + 1;
  const gained = [...base.slice(0, position), block, ...base.slice(position)];
  const after = new Map([...before, [from, rest], [to, gained]]);
  if (from === to && gained.every((one, index) => one === from[index])) return { changes: [], remeasured: 0 };

  // What a pen begins with has no length: where another landing is first now, the two leads change places.
  const leads = new Map<Block, Block>();
  for (const [stroke, now] of after) {
    const [oldFirst] = stroke;
    const [newFirst] = now;
    if (!oldFirst || !newFirst || oldFirst === newFirst) continue;
    leads.set(newFirst, oldFirst).set(oldFirst, newFirst);
  }
  const stale = new Set<Block>();
  for (const now of after.values()) {
    for (const [index, one] of now.entries()) {
      const previous = now[index - 1];
      const { run } = leads.get(one) ?? one;
      if (previous && run && !joins(run, previous.landing, one.landing)) stale.add(one);
    }
  }
  const changes = changesOf(text, bus.blockPlace.file, strokes.flat(), leads, stale);
  return {
    changes: carry(text, bus.blockPlace.file, changes, block, toFront ? target.start : target.end),
    remeasured: stale.size,
  };
}

/** A tap goes to the landing that it shall hang at; its own length is as stale as any. */
function moveTap(bus: Bus, tap: Run, target: Block, toFront: boolean, text: string): Move {
  const name = bus.landings[tap.to ?? -1]?.name ?? 'it';
  if (toFront) return { refused: `${name} hangs on a tap and cannot be the first of the bus.` };
  if (tap.from === target.landing) return { changes: [], remeasured: 0 };
  const { file } = bus.blockPlace;
  const start = withRemarks(text, lineStart(text, tap.place.start));
  const end = lineEnd(text, tap.place.end);
  const remark = remarkAt(text, file, tap.place.end);
  const at = lineEnd(text, target.statement.end);
  return { changes: carry(text, file, remark, { start, end }, at), remeasured: 1 };
}

/** Changes of the lines where they stand. */
function changesOf(
  text: string,
  file: string,
  blocks: readonly Block[],
  leads: ReadonlyMap<Block, Block>,
  stale: ReadonlySet<Block>,
): TextChange[] {
  return blocks.flatMap((block) => {
    const changes: TextChange[] = [];
    const lead = leads.get(block)?.lead;
    if (lead)
      changes.push({ file, start: block.lead.start, end: block.lead.end, text: text.slice(lead.start, lead.end) });
    if (stale.has(block)) changes.push(...remarkAt(text, file, block.statement.end));
    return changes;
  });
}

/** Takes a stretch of lines, as changed, to another place; the other changes stay. */
function carry(
  text: string,
  file: string,
  changes: readonly TextChange[],
  { start, end }: { readonly start: number; readonly end: number },
  at: number,
): TextChange[] {
  const inside = changes.filter((change) => start <= change.start && change.end <= end);
  const others = changes.filter((change) => !inside.includes(change));
  let carried = '';
  let done = start;
  for (const change of inside.toSorted((left, right) => left.start - right.start)) {
    carried += text.slice(done, change.start) + change.text;
    done = change.end;
  }
  carried += text.slice(done, end);
  const taken: TextChange = { file, start, end, text: '' };
  const put: TextChange = { file, start: at, end: at, text: carried };
  return [...others, taken, put].sort((left, right) => left.start - right.start || left.end - right.end);
}

function remarkAt(text: string, file: string, statementEnd: number): TextChange[] {
  const end = lineEnd(text, statementEnd);
  const line = text.slice(statementEnd, end).trimEnd();
  if (line.includes(staleLengthRemark)) return [];
  const at = statementEnd + line.length;
  const remark = line.includes('//') ? `; ${staleLengthRemark}` : ` // ${staleLengthRemark}`;
  return [{ file, start: at, end: at, text: remark }];
}

const joins = (run: Run, one: LandingIndex, other: LandingIndex): boolean =>
  (run.from === one && run.to === other) || (run.from === other && run.to === one);

const lineStart = (text: string, offset: number): number => text.lastIndexOf('\n', offset - 1) + 1;

/** Behind the line's end; the last line of a text may have none, but a bus closes with a brace on a later one. */
function lineEnd(text: string, offset: number): number {
  const end = text.indexOf('\n', offset);
  return end < 0 ? text.length : end + 1;
}

/** The start of the comment lines that stand right above a line. */
function withRemarks(text: string, start: number): number {
  let first = start;
  while (first > 0) {
    const above = lineStart(text, first - 1);
    if (!/^[ \t]*\/\//.test(text.slice(above, first))) break;
    first = above;
  }
  return first;
}

/** Whether nothing but a comment of that line follows. */
const isRemark = (rest: string): boolean => /^\s*(\/\/.*|\/\*((?!\*\/)[^\n])*\*\/\s*(\/\/.*)?)?\s*$/.test(rest);
