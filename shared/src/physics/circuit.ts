/**
 * The resistive circuit of an RS-485 bus: the plus and the minus wire of every run, terminators and unit loads at the
 * landings, bias networks, all against common, which is one node.
 *
 * A crossed landing hangs its device on the pair the other way round while the chain runs straight on. Terminators and
 * loads are alike from both sides; its bias pulls minus up and plus down.
 */
import type { Shape } from '../figures/shape.js';
import { joins } from '../figures/walk.js';
import { isUnknown, type Known, type Range } from '../known.js';
import type { Bus, LandingIndex } from '../network.js';
import type { Ohms, Volts } from '../quantity.js';
import { leastDegreeOrder } from './elimination-order.js';
import { landingLoad, missingLoads, unitLoadResistance } from './loads.js';
import { conductanceOf, ground, jointOhms, NodalStructure } from './nodal.js';

/** One choice of every uncertain value. Factors multiply the nominal value. */
export interface Corner {
  readonly run: 'nominal' | 'low' | 'high';
  readonly terminator: number;
  /** 1 for the unit loads as stated, which is the most that they may be; 0 for none. */
  readonly load: 0 | 1;
  /** Bias that pulls plus up, and bias that pulls it down because its landing is crossed. */
  readonly straight: BiasCorner;
  readonly crossed: BiasCorner;
  /** Whether the supply joins its rail to common: always when powered, perhaps when not. */
  readonly rail: 'joined' | 'open';
}
export interface BiasCorner {
  readonly resistance: number;
  readonly supply: number;
}

const asStated: BiasCorner = { resistance: 1, supply: 1 };
export const nominalCorner: Corner = {
  run: 'nominal',
  terminator: 1,
  load: 1,
  straight: asStated,
  crossed: asStated,
  rail: 'joined',
};

/** A bias network that is connected, by where it is. */
interface LandedBias {
  readonly landing: LandingIndex;
  readonly up: Ohms;
  readonly down: Ohms;
  readonly supply: Volts;
  readonly crossed: boolean;
}

/** More loops than a bus can have by mistake: beyond them readings are not computed, so that no text costs minutes. */
export const mostLoops = 500;

export class BusCircuit {
  readonly structure: NodalStructure;
  private readonly runs: Int32Array;
  private readonly resistances: Record<Corner['run'], Float64Array>;
  private readonly terminators: Float64Array;
  private readonly loads: Float64Array;
  private readonly biases: readonly LandedBias[];
  /** Per component: 1 when something that its levels need is not known. */
  private readonly incomplete: Uint8Array;
  private readonly biased: Uint8Array;

  constructor(
    readonly bus: Bus,
    private readonly shape: Shape,
    private readonly runResistance: (run: number) => Known<Range<Ohms>>,
  ) {
    const { landings } = bus;
    const { componentOf, components } = shape;
    this.incomplete = new Uint8Array(components.length);
    this.biased = new Uint8Array(components.length);
    this.runs = Int32Array.from(bus.runs.filter(joins), ({ index }) => index);
    const count = this.runs.length;
    this.resistances = {
      nominal: new Float64Array(count),
      low: new Float64Array(count),
      high: new Float64Array(count),
    };
    for (let position = 0; position < count; position++) {
      const run = bus.runs[this.runs[position]!]!;
      const resistance = run.length === 0 ? noResistance : runResistance(run.index);
      if (isUnknown(resistance)) {
        this.incomplete[componentOf[run.from]!] = 1;
        continue;
      }
      this.resistances.nominal[position] = resistance.nominal;
      this.resistances.low[position] = resistance.low;
      this.resistances.high[position] = resistance.high;
    }
    this.terminators = new Float64Array(landings.length);
    this.loads = new Float64Array(landings.length);
    for (const landing of landings) {
      // A capacitor in series blocks direct current: an R-C terminator is not there for a meter.
      for (const { resistance, capacitance } of landing.terminations) {
        if (capacitance === undefined) this.terminators[landing.index]! += conductanceOf(resistance);
      }
      const load = landingLoad(landing);
      if (load === undefined) this.incomplete[componentOf[landing.index]!] = 1;
      else this.loads[landing.index] = conductanceOf(unitLoadResistance / load);
    }
    this.biases = bus.biases.flatMap(({ landing, up, down, supply }) =>
      landing === undefined ? [] : [{ landing, up, down, supply, crossed: landings[landing]!.crossed !== undefined }],
    );
    for (const { landing } of this.biases) this.biased[componentOf[landing]!] = 1;
    this.structure = this.assemble();
  }

  /** Why the levels at a landing cannot be computed, if they cannot. */
  missing(landing: LandingIndex): string | undefined {
    const component = this.shape.componentOf[landing]!;
    if (!this.incomplete[component]) return undefined;
    for (const index of this.runs) {
      const run = this.bus.runs[index]!;
      if (this.shape.componentOf[run.from] !== component || run.length === 0) continue;
      const resistance = this.runResistance(index);
      if (isUnknown(resistance)) return resistance.unknown;
    }
    return missingLoads(this.bus, this.shape.components[component]!);
  }

  /** Whether anything biases the part of the bus that a landing is on. */
  isBiased(landing: LandingIndex): boolean {
    return this.biased[this.shape.componentOf[landing]!] === 1;
  }

  /** Whether cable leads from one landing to the other. */
  joined(one: LandingIndex, other: LandingIndex): boolean {
    return this.shape.componentOf[one] === this.shape.componentOf[other];
  }

  get crossedBias(): boolean {
    return this.biases.some(({ crossed }) => crossed);
  }

  private assemble(): NodalStructure {
    const { bus, runs, biases } = this;
    const landingCount = bus.landings.length;
    const branchCount = 2 * runs.length + 3 * landingCount + 2 * biases.length;
    const from = new Int32Array(branchCount);
    const to = new Int32Array(branchCount).fill(ground);
    const joint = new Uint8Array(branchCount);
    let branch = 0;
    for (let position = 0; position < runs.length; position++) {
      const run = bus.runs[runs[position]!]!;
      const isJoint = this.resistances.nominal[position]! <= jointOhms ? 1 : 0;
      for (let wire = 0; wire < 2; wire++) {
        from[branch] = 2 * run.from + wire;
        to[branch] = 2 * run.to! + wire;
        joint[branch++] = isJoint;
      }
    }
    for (let landing = 0; landing < landingCount; landing++) {
      // There at every landing, with or without a terminator: readings are taken across it.
      from[branch] = 2 * landing;
      to[branch] = 2 * landing + 1;
      joint[branch++] = 1 / jointOhms <= this.terminators[landing]! ? 1 : 0;
    }
    for (let node = 0; node < 2 * landingCount; node++) from[branch++] = node;
    for (const { landing, crossed } of biases) {
      from[branch++] = 2 * landing + (crossed ? 1 : 0);
      from[branch++] = 2 * landing + (crossed ? 0 : 1);
    }
    return new NodalStructure(2 * landingCount, from, to, joint, this.order());
  }

  /** Both wires of a landing together; from the leaves of a tree inwards. */
  private order(): Int32Array {
    const { walk, closing } = this.shape;
    const order = new Int32Array(2 * walk.length);
    const landings =
      closing.length === 0
        ? walk.toReversed()
        : leastDegreeOrder(
            walk.length,
            Array.from(this.runs, (run) => this.bus.runs[run]!.from),
            Array.from(this.runs, (run) => this.bus.runs[run]!.to!),
          );
    for (let position = 0; position < landings.length; position++) {
      order[2 * position] = 2 * landings[position]!;
      order[2 * position + 1] = 2 * landings[position]! + 1;
    }
    return order;
  }

  /** The conductance of every branch at a corner. */
  conductances(corner: Corner): Float64Array {
    const values = new Float64Array(this.structure.from.length);
    let branch = 0;
    for (const resistance of this.resistances[corner.run]) {
      const conductance = conductanceOf(resistance);
      values[branch++] = conductance;
      values[branch++] = conductance;
    }
    for (const terminator of this.terminators) values[branch++] = terminator / corner.terminator;
    for (const load of this.loads) {
      values[branch++] = load * corner.load;
      values[branch++] = load * corner.load;
    }
    for (const { up, down, crossed } of this.biases) {
      const { resistance } = crossed ? corner.crossed : corner.straight;
      values[branch++] = corner.rail === 'joined' ? conductanceOf(up * resistance) : 0;
      values[branch++] = conductanceOf(down * resistance);
    }
    return values;
  }

  /** What the powered bias networks drive into each node at a corner. */
  biasCurrents(corner: Corner): Float64Array {
    const currents = new Float64Array(this.structure.nodeCount);
    for (const { landing, up, supply, crossed } of this.biases) {
      const factors = crossed ? corner.crossed : corner.straight;
      currents[2 * landing + (crossed ? 1 : 0)]! += supply * factors.supply * conductanceOf(up * factors.resistance);
    }
    return currents;
  }
}

const noResistance = { nominal: 0, low: 0, high: 0 } as Range<Ohms>;
