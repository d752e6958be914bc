/**
 * Walks over the graph of a bus: which landings are connected, and the shortest way to each. Linear in landings and
 * runs when there is no loop, else a shortest-way search (Dijkstra) with a heap; never recursive, so that a chain of
 * any depth is fine.
 */
import type { Bus, LandingIndex, Run, RunIndex } from '../network.js';

/** Which runs meet at each landing: those of `landing` are `runs[starts[landing]] … runs[starts[landing + 1] - 1]`. */
export interface Incidence {
  readonly starts: readonly number[];
  readonly runs: readonly RunIndex[];
}

export interface Walk {
  readonly components: readonly (readonly LandingIndex[])[];
  readonly componentOf: readonly number[];
  /** Every landing, after the one from which the shortest way arrives. */
  readonly order: readonly LandingIndex[];
  /** Per landing: the run of the shortest way that arrives there; undefined where a component's walk starts. */
  readonly reachedBy: readonly (RunIndex | undefined)[];
  /** Metres along the shortest way from where the component's walk starts. */
  readonly distance: readonly number[];
  readonly closing: readonly RunIndex[];
}

/** Whether a run joins two different landings. */
export const joins = (run: Run): boolean => !run.spare && run.to !== undefined && run.to !== run.from;

/** The landing at the other side of a run that joins two. */
export const across = (run: Run, landing: LandingIndex): LandingIndex =>
  run.from === landing ? (run.to as LandingIndex) : run.from;

export function incidenceOf(bus: Bus): Incidence {
  // Plain arrays: typed ones of this size are slow to make.
  const starts = new Array<number>(bus.landings.length + 1).fill(0);
  for (const run of bus.runs) {
    if (!joins(run)) continue;
    starts[run.from + 1]!++;
    starts[run.to! + 1]!++;
  }
  for (let landing = 0; landing < bus.landings.length; landing++) starts[landing + 1]! += starts[landing]!;
  const runs = new Array<RunIndex>(starts[bus.landings.length]!).fill(0);
  const next = starts.slice();
  for (const run of bus.runs) {
    if (!joins(run)) continue;
    runs[next[run.from]!++] = run.index;
    runs[next[run.to!]!++] = run.index;
  }
  return { starts, runs };
}

/** Walks every component from its first landing. */
export function walkOf(bus: Bus, incidence: Incidence): Walk {
  const count = bus.landings.length;
  const components: LandingIndex[][] = [];
  const componentOf = new Array<number>(count).fill(-1);
  const order: LandingIndex[] = [];
  const reachedBy = new Array<RunIndex | undefined>(count).fill(undefined);
  const distance = new Array<number>(count).fill(0);
  for (let root = 0; root < count; root++) {
    if (componentOf[root] !== -1) continue;
    const first = order.length;
    componentOf[root] = components.length;
    order.push(root);
    for (let position = first; position < order.length; position++) {
      const landing = order[position]!;
      for (let slot = incidence.starts[landing]!; slot < incidence.starts[landing + 1]!; slot++) {
        const run = bus.runs[incidence.runs[slot]!]!;
        const next = across(run, landing);
        if (componentOf[next] !== -1) continue;
        componentOf[next] = components.length;
        reachedBy[next] = run.index;
        distance[next] = distance[landing]! + run.length;
        order.push(next);
      }
    }
    components.push(order.slice(first));
  }
  const closing = closingRuns(bus, components.length);
  const walk = { components, componentOf, order, reachedBy, distance, closing };
  return closing.length === 0 ? walk : { ...walk, ...shortestWays(bus, incidence, components) };
}

/** Runs that join, in the order of the text, what earlier ones have joined already. */
function closingRuns(bus: Bus, componentCount: number): RunIndex[] {
  let joining = 0;
  let returning = 0;
  for (const run of bus.runs) {
    if (joins(run)) joining++;
    else if (!run.spare && run.to !== undefined) returning++;
  }
  // A forest has exactly as many runs as landings less components: then nothing closes, and no search is due.
  if (joining === bus.landings.length - componentCount && returning === 0) return [];
  const group = Int32Array.from(bus.landings.keys());
  const groupOf = (landing: LandingIndex): number => {
    let member = landing;
    while (group[member] !== member) {
      group[member] = group[group[member]!]!;
      member = group[member]!;
    }
    return member;
  };
  const closing: RunIndex[] = [];
  for (const run of bus.runs) {
    if (run.spare || run.to === undefined) continue;
    const from = groupOf(run.from);
    const to = groupOf(run.to);
    if (from === to) closing.push(run.index);
    else group[to] = from;
  }
  return closing;
}

/** Dijkstra's search from the first landing of every component. */
function shortestWays(
  bus: Bus,
  incidence: Incidence,
  components: readonly (readonly LandingIndex[])[],
): Pick<Walk, 'order' | 'reachedBy' | 'distance'> {
  const count = bus.landings.length;
  const order: LandingIndex[] = [];
  const reachedBy = new Array<RunIndex | undefined>(count).fill(undefined);
  const distance = new Array<number>(count).fill(Number.POSITIVE_INFINITY);
  const settled = new Uint8Array(count);
  const heap: HeapEntry[] = [];
  for (const component of components) {
    const root = component[0]!;
    distance[root] = 0;
    pushEntry(heap, { distance: 0, landing: root });
    for (let entry = popEntry(heap); entry; entry = popEntry(heap)) {
      if (settled[entry.landing]) continue;
      settled[entry.landing] = 1;
      order.push(entry.landing);
      for (let slot = incidence.starts[entry.landing]!; slot < incidence.starts[entry.landing + 1]!; slot++) {
        const run = bus.runs[incidence.runs[slot]!]!;
        const next = across(run, entry.landing);
        const candidate = entry.distance + run.length;
        // Infinitely long runs reach nothing nearer, but what lies behind them must be walked all the same.
        if (settled[next] || (reachedBy[next] !== undefined && distance[next]! <= candidate)) continue;
        distance[next] = candidate;
        reachedBy[next] = run.index;
        pushEntry(heap, { distance: candidate, landing: next });
      }
    }
  }
  return { order, reachedBy, distance };
}

interface HeapEntry {
  readonly distance: number;
  readonly landing: LandingIndex;
}

/** Nearest first; equally near ones in the order of the text, so that answers never depend on chance. */
const precedes = (left: HeapEntry, right: HeapEntry): boolean =>
  left.distance < right.distance || (left.distance === right.distance && left.landing < right.landing);

function pushEntry(heap: HeapEntry[], entry: HeapEntry): void {
  let position = heap.length;
  heap.push(entry);
  while (0 < position) {
    const parent = (position - 1) >> 1;
    if (!precedes(entry, heap[parent]!)) break;
    heap[position] = heap[parent]!;
    position = parent;
  }
  heap[position] = entry;
}

function popEntry(heap: HeapEntry[]): HeapEntry | undefined {
  const nearest = heap[0];
  const last = heap.pop();
  if (!last || heap.length === 0) return nearest;
  let position = 0;
  for (let child = 1; child < heap.length; child = 2 * position + 1) {
    if (child + 1 < heap.length && precedes(heap[child + 1]!, heap[child]!)) child++;
    if (!precedes(heap[child]!, last)) break;
    heap[position] = heap[child]!;
    position = child;
  }
  heap[position] = last;
  return nearest;
}
