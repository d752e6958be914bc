/** Which shields of a bus are joined with which: sections, each of which wants one earth. */
import type { Bus, BusKind, LandingIndex, RunIndex } from '../../network.js';
import { isShielded } from './cables.js';

/** Kinds whose shield is earthed directly and at one point. */
export const oneEarthKinds: readonly BusKind[] = ['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485', 'can'];

export interface ShieldSections {
  /** Per run: the number of its section; undefined for runs without a shield, spares too. */
  readonly ofRun: readonly (number | undefined)[];
  /** Sections that meet at a landing, each once, in the order of its runs. */
  at(landing: LandingIndex): number[];
  /** Sections that an earth reaches. */
  readonly earthed: ReadonlySet<number>;
}

/** Joins the shields of all runs that meet at a landing, unless they are cut there. */
export function shieldSections(bus: Bus): ShieldSections {
  const parent = bus.runs.map((_, index) => index);
  const root = (run: RunIndex): RunIndex => {
    let top = run;
    while (parent[top] !== top) top = parent[top] as number;
    // Halving the way up keeps long chains short.
    for (let step = run; parent[step] !== top; ) {
      const next = parent[step] as number;
      parent[step] = top;
      step = next;
    }
    return top;
  };
  const shielded = bus.runs.map((run) => !run.spare && isShielded(run.cable) === true);
  for (const { runs, shield } of bus.landings) {
    if (shield === 'open') continue;
    let first: RunIndex | undefined;
    for (const run of runs) {
      if (!shielded[run]) continue;
      if (first === undefined) first = run;
      else parent[root(run)] = root(first);
    }
  }
  const ofRun = bus.runs.map((_, index) => (shielded[index] ? root(index) : undefined));
  const at = (landing: LandingIndex) => [
    ...new Set((bus.landings[landing]?.runs ?? []).flatMap((run) => ofRun[run] ?? [])),
  ];
  const earthed = new Set(bus.earths.flatMap(({ landing }) => (landing === undefined ? [] : at(landing))));
  return { ofRun, at, earthed };
}
