/**
 * What the input of an alarm loop sees: one resistance for each state that contacts and cable can be in.
 *
 * A closed contact is a joint and an open one a gap: what its surfaces resist is far below the resistors of a loop. The
 * resistance rises with every resistance of the loop (Rayleigh's monotonicity law), so that its least and most over
 * the tolerances are those with every part at its least and at its most.
 */
import { type Outward, outwardFrom } from '../figures/outward.js';
import { isUnknown, type Known, type Range } from '../known.js';
import type { Bus, ContactRest, Landing, LandingIndex, LoopInput, LoopMeaning, Run, RunIndex } from '../network.js';
import { type Ohms, ohms } from '../quantity.js';
import { Ladder, type LadderTree } from './loop-ladder.js';
import { lowered, meterTolerance, raised, terminatorTolerance } from './tolerance.js';

/** One state of the loop and the resistance that the input then sees. */
export interface LoopState {
  readonly state: 'normal' | 'alarm' | 'all alarms' | 'cut' | 'short';
  /** The contact of a single alarm. */
  readonly landing?: LandingIndex;
  /** Of a cut or a short, over every place where it can be; nominal at the place that is the least of them. */
  readonly resistance: Range<Ohms>;
  /** What the input takes it for; `unsure` where it falls between its readings, undefined where it states none. */
  readonly reading?: LoopMeaning | 'unsure';
  /** Of a single alarm: no other contact's alarm gives a resistance that could be this one's. */
  readonly toldApart?: boolean;
}

/** What the input sees while one run is cut, and while the wires touch at its far end, all contacts at rest. */
export interface WireFault {
  readonly run: RunIndex;
  /** Its far end. */
  readonly landing: LandingIndex;
  readonly cut: Range<Ohms>;
  readonly short: Range<Ohms>;
}

/** A loop as its input sees it. */
export interface ContactLoop {
  readonly input: Landing;
  readonly facts: LoopInput;
  /** Landings with a contact, from the input outwards. */
  readonly contacts: readonly Landing[];
  /** Normal first, then each contact's alarm, all alarms, cut, short. */
  readonly states: readonly LoopState[];
  /** Per landing: the state in which its contact alone is in alarm. */
  readonly alarmAt: readonly (LoopState | undefined)[];
  readonly wires: readonly WireFault[];
  /** Of the cable, out and back from the input to the landing that is farthest by resistance. */
  readonly cable: Range<Ohms>;
  /** Across the pair at each landing, the loop lifted off its input, all contacts at rest. */
  readonly meter: readonly Known<Range<Ohms>>[];
}

/** The landing with the input, when there is just one; else why not. */
export function inputOf(bus: Bus): Known<Landing> {
  const [first, second] = bus.landings.filter(({ port }) => port?.input);
  if (!first) return { unknown: 'the input of the loop' };
  return second ? { unknown: `which input reads the loop, ${first.name} or ${second.name}` } : first;
}

/** A contact that a landing has, at its place in the loop. */
interface LandedContact {
  readonly landing: Landing;
  readonly rest: ContactRest;
}

type CornerName = 'nominal' | 'low' | 'high';
const corners = ['nominal', 'low', 'high'] as const;

export function contactLoopOf(bus: Bus, runResistance: (run: Run) => Known<Range<Ohms>>): Known<ContactLoop> {
  const input = inputOf(bus);
  if (isUnknown(input)) return input;
  const facts = input.port!.input!;
  const tree = outwardFrom(bus, input.index);
  if (tree.ring) return { unknown: 'the resistances of a ring: one run of it must be left out' };
  const contacts: LandedContact[] = [];
  for (const index of tree.order) {
    const landing = bus.landings[index]!;
    const missing = missingOf(landing, index === input.index);
    if (missing !== undefined) return { unknown: missing };
    if (landing.port?.contact) contacts.push({ landing, rest: landing.port.contact });
  }
  const runs: Record<CornerName, number[]> = { nominal: [], low: [], high: [] };
  for (const arrival of tree.arrivals) {
    const resistance = arrival === undefined ? nothing : runResistance(bus.runs[arrival]!);
    if (isUnknown(resistance)) return resistance;
    for (const corner of corners) runs[corner].push(2 * resistance[corner]);
  }
  const atRest = ladders(bus, tree, runs, false);
  const wires = wiresOf(tree, atRest);
  const states = statesOf(tree, contacts, wires, atRest, ladders(bus, tree, runs, true));
  const seen = judged(states, facts);
  const alarmAt = new Array<LoopState | undefined>(bus.landings.length).fill(undefined);
  for (const state of seen) if (state.landing !== undefined) alarmAt[state.landing] = state;
  return {
    input,
    facts,
    contacts: contacts.map(({ landing }) => landing),
    states: seen,
    alarmAt,
    wires,
    cable: rangeOf((corner) => farthest(tree, runs[corner])),
    meter: meterOf(bus, tree, atRest),
  };
}

const nothing: Range<Ohms> = { nominal: ohms(0), low: ohms(0), high: ohms(0) };

const rangeOf = (at: (corner: CornerName) => number): Range<Ohms> => ({
  nominal: ohms(at('nominal')),
  low: ohms(at('low')),
  high: ohms(at('high')),
});

/** What the resistances need of a landing and the text does not say. */
function missingOf({ port, node, splice, wiring, name }: Landing, isInput: boolean): string | undefined {
  if (splice !== undefined) return wiring ? `the contact of splice ${name}` : undefined;
  if (node && !port) return `the port of ${name}`;
  if (port?.contact && !wiring) return `how the contact of ${name} lies in the loop`;
  if (wiring && !port?.contact) return `how the contact of ${name} rests`;
  return port && !port.contact && !isInput && port.kind === 'contact-loop' ? `what ${name} is on the loop` : undefined;
}

const factors: Readonly<Record<CornerName, number>> = {
  nominal: 1,
  low: lowered(1, terminatorTolerance),
  high: raised(1, terminatorTolerance),
};

/** The series element and the conductance across that a landing has, its contact at rest or in alarm. */
function elementsAt(landing: Landing, alarm: boolean, factor: number): { series: number; across: number } {
  let conductance = 0;
  for (const { resistance, capacitance } of landing.terminations) {
    if (capacitance === undefined) conductance += 1 / (resistance * factor);
  }
  const { wiring, port } = landing;
  if (!wiring || !port?.contact) return { series: 0, across: conductance };
  const closed = (port.contact === 'closed') !== alarm;
  if (wiring.kind === 'breaks') {
    return { series: closed ? 0 : (wiring.bridge ?? Number.POSITIVE_INFINITY) * factor, across: conductance };
  }
  return { series: 0, across: closed ? conductance + 1 / ((wiring.through ?? 0) * factor) : conductance };
}

type Ladders = Readonly<Record<CornerName, Ladder>>;

function ladders(bus: Bus, tree: LadderTree, runs: Readonly<Record<CornerName, number[]>>, alarm: boolean): Ladders {
  const at = (corner: CornerName) => {
    const elements = bus.landings.map((landing) => elementsAt(landing, alarm, factors[corner]));
    return new Ladder(tree, {
      run: runs[corner],
      series: elements.map(({ series }) => series),
      across: elements.map((element) => element.across),
    });
  };
  return { nominal: at('nominal'), low: at('low'), high: at('high') };
}

function statesOf(
  tree: LadderTree,
  contacts: readonly LandedContact[],
  wires: readonly WireFault[],
  atRest: Ladders,
  inAlarm: Ladders,
): LoopState[] {
  const root = tree.order[0]!;
  const whole = (of: Ladders) => rangeOf((corner) => of[corner].resistances[root]!);
  const states: LoopState[] = [{ state: 'normal', resistance: whole(atRest) }];
  for (const { landing } of contacts) {
    const resistance = rangeOf((corner) => {
      const { series, across: conductance } = elementsAt(landing, true, factors[corner]);
      return atRest[corner].changedAtRoot(landing.index, series, conductance);
    });
    states.push({ state: 'alarm', landing: landing.index, resistance });
  }
  if (1 < contacts.length) states.push({ state: 'all alarms', resistance: whole(inAlarm) });
  if (0 < wires.length) {
    states.push({ state: 'cut', resistance: overall(wires.map(({ cut }) => cut)) });
    states.push({ state: 'short', resistance: overall([nothing, ...wires.map(({ short }) => short)]) });
  }
  return states;
}

/** The least and the most over all places. */
const overall = (ranges: readonly Range<Ohms>[]): Range<Ohms> =>
  ranges.reduce((all, range) => ({
    nominal: ohms(Math.min(all.nominal, range.nominal)),
    low: ohms(Math.min(all.low, range.low)),
    high: ohms(Math.max(all.high, range.high)),
  }));

/** What the input sees with each run cut, and with the wires touching at its far end. */
function wiresOf({ order, arrivals }: Outward, atRest: Ladders): WireFault[] {
  return order.flatMap((landing) => {
    const run = arrivals[landing];
    if (run === undefined) return [];
    const at = (resistance: number) => rangeOf((corner) => atRest[corner].atRoot(landing, resistance));
    return [{ run, landing, cut: at(Number.POSITIVE_INFINITY), short: at(0) }];
  });
}

/** What the input takes a range for. */
export function readingOf(range: Range<Ohms>, { windows }: LoopInput): LoopMeaning | 'unsure' | undefined {
  if (windows.length === 0) return undefined;
  const holding = windows.find(
    ({ above = 0, below = Number.POSITIVE_INFINITY }) => above <= range.low && range.high <= below,
  );
  return holding?.meaning ?? 'unsure';
}

/** States with what the input reads, and single alarms with whether they can be told from one another. */
function judged(states: readonly LoopState[], facts: LoopInput): LoopState[] {
  const alarms = states
    .filter(({ state }) => state === 'alarm')
    .sort((left, right) => left.resistance.low - right.resistance.low);
  const alone = new Set<LoopState>();
  let highest = Number.NEGATIVE_INFINITY;
  for (const [position, alarm] of alarms.entries()) {
    const next = alarms[position + 1];
    if (highest < alarm.resistance.low && (!next || alarm.resistance.high < next.resistance.low)) alone.add(alarm);
    highest = Math.max(highest, alarm.resistance.high);
  }
  return states.map((state) => {
    const reading = readingOf(state.resistance, facts);
    return {
      ...state,
      ...(reading !== undefined && { reading }),
      ...(state.state === 'alarm' && { toldApart: alone.has(state) }),
    };
  });
}

/** Out and back to the landing that is farthest by resistance. */
function farthest({ order, parents }: LadderTree, runs: readonly number[]): number {
  const distance = new Array<number>(parents.length).fill(0);
  let most = 0;
  for (const landing of order) {
    const parent = parents[landing]!;
    if (parent !== -1) distance[landing] = distance[parent]! + runs[landing]!;
    most = Math.max(most, distance[landing]!);
  }
  return most;
}

function meterOf(bus: Bus, tree: LadderTree, atRest: Ladders): Known<Range<Ohms>>[] {
  const [nominal, low, high] = corners.map((corner) => atRest[corner].acrossEverywhere());
  const inTree = new Set(tree.order);
  return bus.landings.map(({ index }) =>
    inTree.has(index)
      ? {
          nominal: ohms(nominal![index]!),
          low: ohms(Math.max(0, lowered(low![index]!, meterTolerance.share) - meterTolerance.leads)),
          high: ohms(raised(high![index]!, meterTolerance.share) + meterTolerance.leads),
        }
      : { unknown: 'the way to the input: nothing joins them' },
  );
}
