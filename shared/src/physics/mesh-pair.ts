/** A pair of any shape, loops included, solved by nodal analysis: node 2n is the plus wire of landing n, 2n + 1 minus. */
import { leastDegreeOrder } from './elimination-order.js';
import { conductanceOf, ground, jointOhms, NodalStructure } from './nodal.js';
import type { Pair, PairCurrents, PairTopology, PairValues } from './pair.js';

export class MeshPair implements Pair {
  private readonly structure: NodalStructure;
  private readonly landingCount: number;

  /** `nominal` tells which runs and terminators are joints; that is the same for every choice of values. */
  constructor(topology: PairTopology, nominal: PairValues) {
    const { landingCount, from: runFrom, to: runTo } = topology;
    this.landingCount = landingCount;
    const branchCount = 2 * runFrom.length + 3 * landingCount;
    const from = new Int32Array(branchCount);
    const to = new Int32Array(branchCount).fill(ground);
    const joint = new Uint8Array(branchCount);
    let branch = 0;
    for (let run = 0; run < runFrom.length; run++) {
      for (let wire = 0; wire < 2; wire++) {
        from[branch] = 2 * runFrom[run]! + wire;
        to[branch] = 2 * runTo[run]! + wire;
        joint[branch++] = nominal.resistances[run]! <= jointOhms ? 1 : 0;
      }
    }
    for (let landing = 0; landing < landingCount; landing++) {
      // There at every landing, with or without a terminator: readings are taken across it.
      from[branch] = 2 * landing;
      to[branch] = 2 * landing + 1;
      joint[branch++] = 1 / jointOhms <= nominal.across[landing]! ? 1 : 0;
    }
    for (let node = 0; node < 2 * landingCount; node++) from[branch++] = node;
    // Both wires of a landing go together: the order of the landings' own graph is as good and half the work.
    const order = leastDegreeOrder(landingCount, runFrom, runTo);
    const nodes = new Int32Array(2 * landingCount);
    for (let position = 0; position < nodes.length; position++) {
      nodes[position] = 2 * order[position >> 1]! + (position & 1);
    }
    this.structure = new NodalStructure(2 * landingCount, from, to, joint, nodes);
  }

  resistances(values: PairValues): number[] {
    const solution = this.structure.solve(this.conductances(values));
    return this.everyLanding((landing) => solution.resistanceBetween(2 * landing, 2 * landing + 1));
  }

  differences(values: PairValues, currents: PairCurrents): number[] {
    const driven = new Float64Array(2 * this.landingCount);
    for (let landing = 0; landing < this.landingCount; landing++) {
      driven[2 * landing] = currents.plus[landing]!;
      driven[2 * landing + 1] = currents.minus[landing]!;
    }
    const solution = this.structure.solve(this.conductances(values));
    const voltages = solution.voltages(driven);
    return this.everyLanding((landing) =>
      solution.connected(2 * landing, 2 * landing + 1) ? voltages[2 * landing]! - voltages[2 * landing + 1]! : 0,
    );
  }

  private conductances(values: PairValues): Float64Array {
    const conductances = new Float64Array(this.structure.from.length);
    let branch = 0;
    for (const resistance of values.resistances) {
      const conductance = conductanceOf(resistance);
      conductances[branch++] = conductance;
      conductances[branch++] = conductance;
    }
    for (const conductance of values.across) conductances[branch++] = conductance;
    for (let landing = 0; landing < this.landingCount; landing++) {
      conductances[branch++] = values.plusToCommon[landing]!;
      conductances[branch++] = values.minusToCommon[landing]!;
    }
    return conductances;
  }

  private everyLanding(figure: (landing: number) => number): number[] {
    const figures = new Array<number>(this.landingCount);
    for (let landing = 0; landing < this.landingCount; landing++) figures[landing] = figure(landing);
    return figures;
  }
}
