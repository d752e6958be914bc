/** The shape of a bus: what is connected to what, where it ends, what hangs on taps, how far everything is. */
import type { Bus, LandingIndex, RunIndex } from '../network.js';
import type { Metres } from '../quantity.js';
import { type RunCensus, runCensusOf } from './run-census.js';
import { type Tap, tapsOf, trunkLandings } from './taps.js';
import { across, incidenceOf, walkOf } from './walk.js';

export type { Tap };

/** The shape of a bus. Spare runs do not count. */
export interface Shape {
  /** Groups of connected landings; the first holds the bus's first landing, the others are islands. */
  readonly components: readonly (readonly LandingIndex[])[];
  /** Per landing: which component. */
  readonly componentOf: readonly number[];
  /**
   * Per landing: cables of the trunk that meet there. Runs that are taps or lie behind one do not count, so that it
   * is 0 for every landing on a tap; nor does a run that ends nowhere, or that leaves a landing and comes back to it.
   */
  readonly trunkDegree: readonly number[];
  /** Runs that close a loop, in the order of the text: each joins what was joined already. */
  readonly closing: readonly RunIndex[];
  /** Landings where three or more trunk cables meet. */
  readonly branches: readonly LandingIndex[];
  /** Landings on a tap: reached from the trunk only through tap runs. */
  readonly onTap: ReadonlySet<LandingIndex>;
  /** Runs that end nowhere, in the order of the text. */
  readonly loose: readonly RunIndex[];
  /**
   * The two ends when the bus is one plain chain (one component, no loop, no branch, no trunk run that goes on from an
   * end to nowhere), else undefined; the first of them is the earlier one in the text. A bus with a single landing has
   * none.
   */
  readonly ends?: readonly [LandingIndex, LandingIndex];
  /** The trunk's landings from the first end to the second, when it has ends. */
  readonly trunk: readonly LandingIndex[];
  /**
   * Along the cable from the bus's first landing, shortest way; undefined on islands. On Ethernet, where every link
   * stands alone, from the first landing of the link.
   */
  readonly distance: readonly (Metres | undefined)[];
  /** Every landing, each after the one from which the shortest way arrives. */
  readonly walk: readonly LandingIndex[];
  /**
   * Per landing: the run by which the shortest way arrives; undefined where a walk starts, which is at the bus's
   * first landing and at the first landing of each island.
   */
  readonly reachedBy: readonly (RunIndex | undefined)[];
  /** Taps: each tap run with the landing it hangs on and everything behind it, in the order of the text. */
  readonly taps: readonly Tap[];
}

const nothing: readonly never[] = [];
const noTaps: readonly Tap[] = nothing;
const nothingOnTap: ReadonlySet<LandingIndex> = new Set();

export function shapeOf(bus: Bus, { isChain }: RunCensus = runCensusOf(bus)): Shape {
  return isChain ? new PlainChain(bus) : walkedShape(bus);
}

/** Nearly all buses are such chains. Their shape is seen without a walk, which is made when somebody asks for more. */
class PlainChain implements Shape {
  readonly closing = nothing;
  readonly branches = nothing;
  readonly loose = nothing;
  readonly taps = noTaps;
  readonly onTap = nothingOnTap;
  readonly ends: readonly [LandingIndex, LandingIndex];
  readonly #bus: Bus;
  #walked: Shape | undefined;

  constructor(bus: Bus) {
    this.#bus = bus;
    this.ends = [0, bus.runs.length];
  }

  get #asWalked(): Shape {
    this.#walked ??= walkedShape(this.#bus);
    return this.#walked;
  }

  get components() {
    return this.#asWalked.components;
  }
  get componentOf() {
    return this.#asWalked.componentOf;
  }
  get trunkDegree() {
    return this.#asWalked.trunkDegree;
  }
  get trunk() {
    return this.#asWalked.trunk;
  }
  get distance() {
    return this.#asWalked.distance;
  }
  get walk() {
    return this.#asWalked.walk;
  }
  get reachedBy() {
    return this.#asWalked.reachedBy;
  }
}

/** The shape of any bus. */
export function walkedShape(bus: Bus): Shape {
  const count = bus.landings.length;
  const incidence = incidenceOf(bus);
  const { components, componentOf, order, reachedBy, distance, closing } = walkOf(bus, incidence);
  const hasTaps = bus.runs.some((run) => run.tap && !run.spare);
  const onTrunk = hasTaps ? trunkLandings(bus, incidence, components) : undefined;

  const trunkDegree = new Array<number>(count).fill(0);
  const loose: RunIndex[] = [];
  const looseTrunk: LandingIndex[] = [];
  for (const run of bus.runs) {
    if (run.spare) continue;
    if (run.to === undefined) loose.push(run.index);
    if (run.to === run.from || run.tap || (onTrunk && !onTrunk[run.from])) continue;
    if (run.to === undefined) {
      looseTrunk.push(run.from);
      continue;
    }
    trunkDegree[run.from]!++;
    trunkDegree[run.to]!++;
  }
  const branches: LandingIndex[] = [];
  const leaves: LandingIndex[] = [];
  for (let landing = 0; landing < count; landing++) {
    if (3 <= trunkDegree[landing]!) branches.push(landing);
    else if (trunkDegree[landing] === 1) leaves.push(landing);
  }
  // Where the cable goes on to nowhere, the landing may not be the end that was meant.
  const goesOn = looseTrunk.some((landing) => leaves.includes(landing));
  const isChain =
    components.length === 1 && closing.length === 0 && branches.length === 0 && !goesOn && leaves.length === 2;
  const ends = isChain ? ([leaves[0]!, leaves[1]!] as const) : undefined;

  const onTap = onTrunk ? new Set(order.filter((landing) => !onTrunk[landing])) : nothingOnTap;
  return {
    components,
    componentOf,
    trunkDegree,
    closing,
    branches,
    onTap,
    loose,
    ...(ends && { ends }),
    trunk: ends ? trunkBetween(bus, ends, reachedBy) : [],
    distance: (components.length <= 1 || bus.kind === 'ethernet'
      ? distance
      : distance.map((value, landing) => (componentOf[landing] === 0 ? value : undefined))) as (Metres | undefined)[],
    walk: order,
    reachedBy,
    taps: onTrunk ? tapsOf(bus, incidence, onTrunk) : noTaps,
  };
}

/** The landings of a chain: back from each end to the walk's start, the two halves joined. */
function trunkBetween(
  bus: Bus,
  ends: readonly [LandingIndex, LandingIndex],
  reachedBy: readonly (RunIndex | undefined)[],
): LandingIndex[] {
  const wayBack = (end: LandingIndex): LandingIndex[] => {
    const way = [end];
    for (let run = reachedBy[end]; run !== undefined; run = reachedBy[way.at(-1)!]) {
      way.push(across(bus.runs[run]!, way.at(-1)!));
    }
    return way;
  };
  const first = wayBack(ends[0]);
  const second = wayBack(ends[1]);
  return [...first, ...second.slice(0, -1).reverse()];
}

/** Where the distance of a landing counts from: where its piece of the bus starts. */
export const originOf = ({ components, componentOf }: Shape, landing: LandingIndex): LandingIndex =>
  components[componentOf[landing]!]![0]!;
