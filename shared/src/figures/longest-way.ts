/**
 * The longest way along the cable between two landings.
 *
 * Without loops one pass over the tree finds it. With loops a signal takes every way, so that the longest simple way
 * counts; to find it is a search of all ways, which is given up after {@link mostSteps}.
 */
import type { Known } from '../known.js';
import type { Bus, LandingIndex, Run } from '../network.js';
import type { Shape } from './shape.js';
import { across, incidenceOf, joins } from './walk.js';

export interface Way {
  /** The earlier one in the text. */
  readonly from: LandingIndex;
  readonly to: LandingIndex;
  /** Sum of the runs, and of what the two landings add. */
  readonly length: number;
}

/** What counts: a run's share, and what a landing adds when the way ends there; undefined where none may end. */
export interface WayMeasure {
  run(run: Run): number;
  end(landing: LandingIndex): number | undefined;
}

/** A ring of some four hundred landings; no bus of this trade comes near. */
const mostSteps = 400_000;

/** The longest way, or undefined when no two landings that may end one are joined. */
export function longestWay(bus: Bus, shape: Shape, measure: WayMeasure): Known<Way | undefined> {
  return shape.closing.length === 0 ? inTree(bus, shape, measure) : searched(bus, measure);
}

/** From the leaves towards where each walk starts: the two deepest branches of every landing make its longest way. */
function inTree(bus: Bus, { walk, reachedBy }: Shape, measure: WayMeasure): Way | undefined {
  const depth = new Array<number>(bus.landings.length);
  const deepest = new Array<LandingIndex>(bus.landings.length).fill(-1);
  for (let landing = 0; landing < depth.length; landing++) {
    const end = measure.end(landing);
    depth[landing] = end ?? 0;
    if (end !== undefined) deepest[landing] = landing;
  }
  let longest: Way | undefined;
  for (let walked = walk.length - 1; 0 <= walked; walked--) {
    const landing = walk[walked]!;
    const arrival = reachedBy[landing];
    if (arrival === undefined || deepest[landing] === -1) continue;
    const run = bus.runs[arrival]!;
    const above = across(run, landing);
    const branch = depth[landing]! + measure.run(run);
    if (deepest[above] === -1) {
      depth[above] = branch;
      deepest[above] = deepest[landing]!;
      continue;
    }
    const length = depth[above]! + branch;
    if (!longest || longest.length < length) {
      const [one, other] = [deepest[above]!, deepest[landing]!];
      longest = { from: Math.min(one, other), to: Math.max(one, other), length };
    }
    if (depth[above]! < branch) {
      depth[above] = branch;
      deepest[above] = deepest[landing]!;
    }
  }
  return longest;
}

/** Depth first along every simple way from every landing that may end one. */
function searched(bus: Bus, measure: WayMeasure): Known<Way | undefined> {
  const { starts, runs } = incidenceOf(bus);
  const lengths = bus.runs.map((run) => (joins(run) ? measure.run(run) : 0));
  const ends = bus.landings.map(({ index }) => measure.end(index));
  const onWay = new Uint8Array(bus.landings.length);
  let steps = 0;
  let longest: Way | undefined;
  for (let from = 0; from < ends.length; from++) {
    const start = ends[from];
    if (start === undefined) continue;
    const way = [{ landing: from, slot: starts[from]!, length: start }];
    onWay[from] = 1;
    while (way.length > 0) {
      const step = way.at(-1)!;
      if (step.slot === starts[step.landing + 1]) {
        onWay[step.landing] = 0;
        way.pop();
        continue;
      }
      const run = bus.runs[runs[step.slot++]!]!;
      const next = across(run, step.landing);
      if (onWay[next]) continue;
      if (mostSteps < ++steps) return { unknown: 'the longest way between two landings: there are too many loops' };
      const length = step.length + lengths[run.index]!;
      const end = ends[next];
      if (end !== undefined && from < next && (!longest || longest.length < length + end))
        longest = { from, to: next, length: length + end };
      onWay[next] = 1;
      way.push({ landing: next, slot: starts[next]!, length });
    }
  }
  return longest;
}
