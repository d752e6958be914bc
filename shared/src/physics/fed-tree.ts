/**
 * The voltages of loads that one source feeds over resistive cable, any shape, rings too.
 *
 * Out and back are one resistance, so that each run is a branch and the source is the node that all voltages are
 * counted down from: with u the drop at each landing, G u = I(u), where G is the conductance matrix without the source
 * and I(u) the currents of the loads, fixed or P/(V - u).
 *
 * Newton's method from u = 0. G is an M-matrix and I is convex and rises with u, so that, where there is a solution, the
 * iterates rise to the least one, which is the one that a supply settles at when it is switched on, and at each of them
 * G - I'(u) is positive definite (J. M. Ortega, W. C. Rheinboldt, Iterative Solution of Nonlinear Equations in Several
 * Variables, 1970, 13.3, the monotone Newton theorem). A pivot that is not positive, or a drop as large as the source,
 * therefore proves that there is no solution: the voltage collapses. For one load it is V = (Vs + sqrt(Vs^2 - 4 P R))/2,
 * without a solution below the root.
 */
import { factorOf, solveInPlace } from './factor.js';
import { ground, NodalStructure } from './nodal.js';

/** What a landing draws: a current, or a power whatever the voltage. */
export interface Draw {
  readonly amperes: number;
  readonly watts: number;
}

/** Landings by number; the source is one of them. Runs by their position. */
export interface FedTopology {
  readonly landingCount: number;
  readonly source: number;
  readonly from: readonly number[];
  readonly to: readonly number[];
}

export interface FedSolution {
  /** Per landing. */
  readonly volts: readonly number[];
  /** Per run, positive from `from` to `to`. */
  readonly amperes: readonly number[];
}

/** A cable resists at least this much: 1 microohm, far below any contact. It keeps the arithmetic away from 1/0. */
const leastResistance = 1e-6;
/** Drops that change less than this share of the source's voltage are settled. */
const settled = 1e-10;
/** Steps at most; beside a fold each one gains a bit only, and what has not settled by then is at the fold itself. */
const mostSteps = 60;

export class FedTree {
  private readonly structure: NodalStructure;

  /** Every landing must be joined to the source. */
  constructor(private readonly topology: FedTopology) {
    const { landingCount, source } = topology;
    const node = (landing: number) => (landing === source ? ground : landing < source ? landing : landing - 1);
    this.structure = new NodalStructure(
      landingCount - 1,
      Int32Array.from(topology.from, node),
      Int32Array.from(topology.to, node),
      new Uint8Array(topology.from.length),
    );
  }

  /**
   * Voltages and currents for a source voltage, the resistance of each run out and back, and what each landing draws;
   * undefined where the loads ask for more than the cable can carry.
   */
  solve(source: number, resistances: readonly number[], draws: readonly Draw[]): FedSolution | undefined {
    const conductances = resistances.map((resistance) => 1 / Math.max(resistance, leastResistance));
    const { from, to } = this.topology;
    const drops = new Float64Array(this.topology.landingCount);
    let moving = true;
    for (let step = 0; moving && step < mostSteps; step++) {
      const change = this.step(source, conductances, draws, drops);
      if (!change) return undefined;
      moving = false;
      for (const [landing, rise] of change.entries()) {
        drops[landing]! += rise;
        if (source * settled < rise) moving = true;
        if (!(drops[landing]! < source)) return undefined;
      }
    }
    if (moving) return undefined;
    return {
      volts: Array.from(drops, (drop) => source - drop),
      amperes: conductances.map((conductance, run) => (drops[to[run]!]! - drops[from[run]!]!) * conductance),
    };
  }

  /** One step of Newton's method; undefined where it proves that there is no solution. */
  private step(
    source: number,
    conductances: readonly number[],
    draws: readonly Draw[],
    drops: Float64Array,
  ): Float64Array | undefined {
    const { structure, topology } = this;
    const { size } = structure.pattern;
    const diagonal = new Float64Array(size);
    const residual = new Float64Array(size);
    const entries = new Float64Array(conductances.length);
    for (const [run, conductance] of conductances.entries()) {
      const left = structure.row(structure.from[run]!);
      const right = structure.row(structure.to[run]!);
      if (left === right) continue;
      entries[run] = -conductance;
      const current = conductance * (drops[topology.from[run]!]! - drops[topology.to[run]!]!);
      if (left !== ground) {
        diagonal[left]! += conductance;
        residual[left]! -= current;
      }
      if (right !== ground) {
        diagonal[right]! += conductance;
        residual[right]! += current;
      }
    }
    for (const [landing, { amperes, watts }] of draws.entries()) {
      const row = this.rowOf(landing);
      if (row === ground) continue;
      const voltage = source - drops[landing]!;
      residual[row]! += amperes + watts / voltage;
      diagonal[row]! -= watts / voltage ** 2;
    }
    const factor = factorOf(structure.pattern, entries, diagonal);
    if (!factor.diagonal.every((pivot) => 0 < pivot)) return undefined;
    solveInPlace(factor, residual);
    return Float64Array.from(drops, (_, landing) => {
      const row = this.rowOf(landing);
      return row === ground ? 0 : residual[row]!;
    });
  }

  private rowOf(landing: number): number {
    const { source } = this.topology;
    if (landing === source) return ground;
    return this.structure.row(landing < source ? landing : landing - 1);
  }
}
