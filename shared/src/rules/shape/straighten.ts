/** Re-drawing a bus as one chain: the shortest order of its landings, and the course that writes it down. */
import { type Shape, shapeOf } from '../../figures/shape.js';
import { across } from '../../figures/walk.js';
import type { CourseStep } from '../../finding.js';
import type { Bus, LandingIndex, RunIndex } from '../../network.js';
import { type Metres, metres } from '../../quantity.js';

/** Cable to the next landing of a chain. Without `run` it was never measured. */
export interface Link {
  readonly landing: LandingIndex;
  readonly length: Metres;
  readonly run?: RunIndex;
}

export interface Chain {
  readonly start: LandingIndex;
  readonly links: readonly Link[];
}

/** A larger bus is no bus that anybody pulls; drawing it anew for each of its findings would only make people wait. */
const mostRuns = 1000;

/** Whether a re-drawn course can hold the whole bus, but for a run that is left out: nothing loose, spare, apart or closed. */
export const canRewire = (bus: Bus, shape: Shape, left?: RunIndex): boolean =>
  bus.runs.length <= mostRuns &&
  shape.components.length === 1 &&
  shape.closing.length === 0 &&
  shape.loose.length === 0 &&
  bus.runs.every(({ spare, index }) => !spare || index === left);

/** A bus as it would be without one of its runs, and its shape. Indices stay as they are. */
export function without(bus: Bus, left: RunIndex): { readonly bus: Bus; readonly shape: Shape } {
  const landings = bus.landings.map((landing) =>
    landing.runs.includes(left) ? { ...landing, runs: landing.runs.filter((run) => run !== left) } : landing,
  );
  const runs = bus.runs.map((run) => (run.index === left ? { ...run, spare: true } : run));
  const rest = { ...bus, landings, runs };
  return { bus: rest, shape: shapeOf(rest) };
}

/**
 * The shortest chain through all landings of a trunk that is a tree, with new cable pulled along the cable that is
 * there. Lengths along a tree are a tree metric, in which the shortest path through all vertices is twice the cable
 * less the longest way: walk the longest way, and every side branch where it leaves it.
 */
export function shortestChain(bus: Bus, shape: Shape): Chain {
  const neighbours = trunkNeighbours(bus, shape);
  const firstEnd = walkFrom(bus, neighbours, shape.components[0]![0]!).farthest;
  const secondEnd = walkFrom(bus, neighbours, firstEnd).farthest;
  const start = Math.min(firstEnd, secondEnd);
  const { parentRun, distance } = walkFrom(bus, neighbours, start);
  const onLongest = new Set<LandingIndex>([start]);
  for (let at = Math.max(firstEnd, secondEnd); at !== start; at = across(bus.runs[parentRun.get(at)!]!, at))
    onLongest.add(at);

  const links: Link[] = [];
  const open = [start];
  let previous: LandingIndex | undefined;
  for (let landing = open.pop(); landing !== undefined; landing = open.pop()) {
    const run = parentRun.get(landing);
    if (previous !== undefined && run !== undefined) {
      const parent = across(bus.runs[run]!, landing);
      // The walk comes from the parent itself, or back to it from the end of another branch.
      const length = metres(distance.get(previous)! + distance.get(landing)! - 2 * distance.get(parent)!);
      links.push(parent === previous ? { landing, length: bus.runs[run]!.length, run } : { landing, length });
    }
    previous = landing;
    const further = neighbours[landing]!.filter((next) => next !== run).map((next) =>
      across(bus.runs[next]!, landing!),
    );
    // What is pushed first is walked last: the longest way after every side branch.
    further.sort((left, right) => Number(onLongest.has(right)) - Number(onLongest.has(left)) || right - left);
    open.push(...further);
  }
  return { start, links };
}

/** The chain of a bus that is one, with the landing of one of its taps taken into the trunk. */
export function chainThroughTap(bus: Bus, shape: Shape, tapRun: RunIndex, at: LandingIndex): Chain | undefined {
  const tap = bus.runs[tapRun]!;
  if (!shape.ends || tap.to === undefined || shape.onTap.has(at)) return undefined;
  const landing = across(tap, at);
  // Whatever hangs behind the tapped landing would become a tap of its own.
  if (bus.landings[landing]!.runs.length !== 1) return undefined;
  const measured = { length: tap.length, run: tapRun };
  const [first] = shape.trunk;
  if (first === undefined) return undefined;
  const links: Link[] = [];
  if (first === at) links.push({ landing: at, ...measured });
  for (let position = 1; position < shape.trunk.length; position++) {
    const from = shape.trunk[position - 1]!;
    const to = shape.trunk[position]!;
    const meeting = bus.landings[from]!.runs.map((index) => bus.runs[index]!);
    const run = meeting.find((one) => !one.tap && one.to !== undefined && across(one, from) === to);
    if (!run) return undefined;
    const comesFromTap = from === at && from !== first;
    if (comesFromTap) links.push({ landing, ...measured });
    links.push(
      comesFromTap
        ? { landing: to, length: metres(tap.length + run.length) }
        : { landing: to, length: run.length, run: run.index },
    );
  }
  if (shape.trunk.at(-1) === at && first !== at) links.push({ landing, ...measured });
  return { start: first === at ? landing : first, links };
}

/** The course of a chain with the taps that hang on it. Runs of the trunk that the chain does not use are left out. */
export function courseOf(bus: Bus, shape: Shape, { start, links }: Chain): CourseStep[] {
  const used = new Set(links.flatMap(({ run }) => (run === undefined ? [] : [run])));
  const hanging = bus.runs.filter(
    (run) => !run.spare && !used.has(run.index) && (run.tap || shape.onTap.has(run.from)),
  );
  const course: CourseStep[] = [{ step: 'from', landing: start }];
  const inline = new Set<RunIndex>();
  const tapsAt = new Map<LandingIndex, typeof hanging>();
  for (const run of hanging) if (run.tap) tapsAt.set(run.from, [...(tapsAt.get(run.from) ?? []), run]);
  const pullTaps = (landing: LandingIndex) => {
    for (const run of tapsAt.get(landing) ?? []) {
      course.push({ step: 'tap', landing: run.to!, length: run.length, run: run.index });
      inline.add(run.index);
    }
  };
  pullTaps(start);
  for (const { landing, length, run } of links) {
    course.push({ step: 'to', landing, length, ...(run === undefined ? {} : { run }) });
    pullTaps(landing);
  }
  let pen: LandingIndex | undefined;
  for (const run of hanging) {
    if (inline.has(run.index)) continue;
    if (pen !== run.from) course.push({ step: 'from', landing: run.from });
    course.push({ step: run.tap ? 'tap' : 'to', landing: run.to!, length: run.length, run: run.index });
    pen = run.tap ? run.from : run.to!;
  }
  return course;
}

/** Per landing the trunk runs that meet there, in the order of the text. */
function trunkNeighbours(bus: Bus, shape: Shape): RunIndex[][] {
  const neighbours: RunIndex[][] = bus.landings.map(() => []);
  for (const run of bus.runs) {
    if (run.spare || run.tap || run.to === undefined || shape.onTap.has(run.from)) continue;
    neighbours[run.from]!.push(run.index);
    neighbours[run.to]!.push(run.index);
  }
  return neighbours;
}

/** Distances over the tree from one landing, the run by which each is reached, and the farthest one. */
function walkFrom(bus: Bus, neighbours: readonly (readonly RunIndex[])[], start: LandingIndex) {
  const distance = new Map<LandingIndex, number>([[start, 0]]);
  const parentRun = new Map<LandingIndex, RunIndex>();
  let farthest = start;
  for (const landing of distance.keys()) {
    if (distance.get(farthest)! < distance.get(landing)!) farthest = landing;
    for (const index of neighbours[landing]!) {
      const run = bus.runs[index]!;
      const next = across(run, landing);
      if (distance.has(next)) continue;
      distance.set(next, distance.get(landing)! + run.length);
      parentRun.set(next, index);
    }
  }
  return { distance, parentRun, farthest };
}
