/**
 * A bus as lines to walk along. A plain chain is one strand from end to end. Any other shape is drawn as its text walks
 * it: each stroke of the pen is a strand, and one that starts or arrives at a landing that is drawn already shows that
 * landing again, marked with a letter that both places carry. Thus a star, a ring, a tree, an island and cable that
 * ends nowhere all have a drawing in which no run is bent to fit and none is left out.
 */
import type { Shape } from '../figures/shape.js';
import type { Bus, LandingIndex, Run } from '../network.js';

/** A place of a strand where cable is landed, or where it ends in the air. */
export interface Stop {
  /** Undefined where a run ends nowhere. */
  readonly landing: LandingIndex | undefined;
  /** The landing is drawn elsewhere; here stands a reference to it. */
  readonly again: boolean;
  /** The run by which the strand arrives; undefined at its first stop. */
  readonly run: Run | undefined;
  /** What hangs here, in the order of the text. */
  readonly hanging: readonly Hanging[];
}

/** A tap, or a run of the trunk that ends nowhere while the walk goes on from where it began. */
export interface Hanging {
  readonly run: Run;
  readonly landing: LandingIndex | undefined;
  readonly again: boolean;
}

export interface Strand {
  readonly stops: readonly Stop[];
  /** No cable joins it with the bus's first landing. */
  readonly island: boolean;
}

interface OpenStop {
  landing: LandingIndex | undefined;
  again: boolean;
  run: Run | undefined;
  hanging: Hanging[];
}

/** @param most how many runs may hang at one stop; further ones hang where the landing is shown again */
export function strandsOf(bus: Bus, shape: Shape, most: number): Strand[] {
  const strands: OpenStop[][] = [];
  const drawn = new Set<LandingIndex>();
  const used = new Set<Run>();
  /** The stop at which further runs of a landing hang: the last place where it was shown. */
  const stopOf = new Map<LandingIndex, OpenStop>();

  const visit = (landing: LandingIndex | undefined, run: Run | undefined): OpenStop => {
    const again = landing !== undefined && drawn.has(landing);
    const stop: OpenStop = { landing, again, run, hanging: [] };
    if (landing !== undefined) {
      drawn.add(landing);
      if (!again) stopOf.set(landing, stop);
    }
    if (run) used.add(run);
    return stop;
  };
  const hang = (run: Run, at: LandingIndex) => {
    const reached = run.from === at ? run.to : run.from;
    let stop = stopOf.get(at);
    if (!stop || most <= stop.hanging.length) {
      stop = visit(at, undefined);
      stopOf.set(at, stop);
      strands.push([stop]);
    }
    const again = reached !== undefined && drawn.has(reached);
    if (reached !== undefined) drawn.add(reached);
    used.add(run);
    stop.hanging.push({ run, landing: reached, again });
  };

  if (shape.ends) strands.push(chain(bus, shape, visit));
  const lastFrom = new Map<LandingIndex, number>();
  for (const { from, index, tap, spare } of bus.runs) if (!tap && !spare) lastFrom.set(from, index);
  for (const run of bus.runs) {
    if (run.spare || used.has(run)) continue;
    const strand = strands.at(-1);
    const last = strand?.at(-1);
    const goesOn = strand !== undefined && last?.landing === run.from && !(shape.ends && strand === strands[0]);
    const leavesPen = run.to === undefined && run.index < (lastFrom.get(run.from) ?? -1);
    if (run.tap || leavesPen) {
      if (!drawn.has(run.from)) strands.push([visit(run.from, undefined)]);
      hang(run, run.from);
    } else if (goesOn) {
      strand.push(visit(run.to, run));
    } else {
      strands.push([visit(run.from, undefined), visit(run.to, run)]);
    }
  }
  for (const { index } of bus.landings) if (!drawn.has(index)) strands.push([visit(index, undefined)]);
  // The links of an Ethernet are joined by the switches between them.
  const joined = bus.kind === 'ethernet';
  return strands.map((stops) => ({ stops, island: !joined && isIsland(stops, shape) }));
}

/** The trunk of a plain chain, from the end that the text has first. */
function chain(
  bus: Bus,
  { trunk, reachedBy }: Shape,
  visit: (landing: LandingIndex, run: Run | undefined) => OpenStop,
): OpenStop[] {
  return trunk.map((landing, position) => {
    const before = trunk[position - 1];
    if (before === undefined) return visit(landing, undefined);
    const joins = (index: number | undefined, other: LandingIndex) => {
      const run = index === undefined ? undefined : bus.runs[index];
      return run && (run.from === other || run.to === other) ? run : undefined;
    };
    return visit(landing, joins(reachedBy[landing], before) ?? joins(reachedBy[before], landing));
  });
}

function isIsland(stops: readonly OpenStop[], shape: Shape): boolean {
  return stops.some(({ landing }) => landing !== undefined && shape.componentOf[landing] !== 0);
}
