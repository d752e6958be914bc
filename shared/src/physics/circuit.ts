/**
 * The resistive circuit of a bus of RS-485, CAN or free topology: what its landings, cables and bias networks amount to at one choice of every
 * uncertain value, a {@link Corner}.
 *
 * A crossed landing hangs its device on the pair the other way round while the chain runs straight on. Terminators and
 * loads are alike from both sides; its bias pulls minus up and plus down.
 */
import type { Shape } from '../figures/shape.js';
import { across, joins } from '../figures/walk.js';
import { isUnknown, type Known, type Range } from '../known.js';
import type { Bus, LandingIndex, Run } from '../network.js';
import { type Ohms, ohms, type Volts } from '../quantity.js';
import { missingLoads, portConductance } from './loads.js';
import { MeshPair } from './mesh-pair.js';
import { conductanceOf } from './nodal.js';
import type { Pair, PairCurrents, PairValues } from './pair.js';
import { TreePair } from './tree-pair.js';

/** One choice of every uncertain value. Factors multiply the nominal value. */
export interface Corner {
  readonly run: 'nominal' | 'low' | 'high';
  readonly terminator: number;
  /** 1 for what the ports draw as stated, which is the most that they may; 0 for none. */
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

/** More loops than a bus can have by mistake: beyond them readings are not computed, so that no text costs minutes. */
export const mostLoops = 500;

/** A bias network that is connected, by where it is. */
interface LandedBias {
  readonly landing: LandingIndex;
  readonly up: Ohms;
  readonly down: Ohms;
  readonly supply: Volts;
  readonly crossed: boolean;
}

export class BusCircuit {
  readonly pair: Pair;
  private readonly runs: readonly Run[];
  private readonly wires: { readonly [Key in Corner['run']]: number[] } = { nominal: [], low: [], high: [] };
  private readonly terminators: number[] = [];
  private readonly inputs: number[] = [];
  private readonly loads: number[] = [];
  private readonly biases: LandedBias[] = [];
  /** Components with something that their levels need and that is not known. */
  private readonly incomplete = new Set<number>();
  private readonly biased = new Set<number>();

  constructor(
    readonly bus: Bus,
    private readonly shape: Shape,
    private readonly runResistance: (run: Run) => Known<Range<Ohms>>,
  ) {
    this.runs = bus.runs.filter(joins);
    this.addRuns();
    this.addLandings();
    this.addBiases();
    this.pair = shape.closing.length === 0 ? this.treePair() : this.meshPair();
  }

  private addRuns(): void {
    for (const run of this.runs) {
      const resistance = run.length === 0 ? noResistance : this.runResistance(run);
      const known = isUnknown(resistance) ? noResistance : resistance;
      if (isUnknown(resistance)) this.incomplete.add(this.shape.componentOf[run.from]!);
      this.wires.nominal.push(known.nominal);
      this.wires.low.push(known.low);
      this.wires.high.push(known.high);
    }
  }

  private addLandings(): void {
    for (const landing of this.bus.landings) {
      let terminator = 0;
      // A capacitor in series blocks direct current: an R-C terminator is not there for a meter.
      for (const { resistance, capacitance } of landing.terminations) {
        if (capacitance === undefined) terminator += conductanceOf(resistance);
      }
      this.terminators.push(terminator);
      const port = portConductance(this.bus.kind, landing);
      if (port === undefined) this.incomplete.add(this.shape.componentOf[landing.index]!);
      this.inputs.push(port?.across ?? 0);
      this.loads.push(port?.toCommon ?? 0);
    }
  }

  private addBiases(): void {
    for (const { landing, up, down, supply } of this.bus.biases) {
      if (landing === undefined) continue;
      const crossed = this.bus.landings[landing]!.crossed !== undefined;
      this.biases.push({ landing, up, down, supply, crossed });
      this.biased.add(this.shape.componentOf[landing]!);
    }
  }

  private treePair(): Pair {
    const { walk, reachedBy } = this.shape;
    const position = new Array<number>(this.bus.runs.length).fill(-1);
    for (let joining = 0; joining < this.runs.length; joining++) position[this.runs[joining]!.index] = joining;
    const parents: number[] = [];
    const parentRuns: number[] = [];
    for (let landing = 0; landing < walk.length; landing++) {
      const arrival = reachedBy[landing];
      parents.push(arrival === undefined ? -1 : across(this.bus.runs[arrival]!, landing));
      parentRuns.push(arrival === undefined ? -1 : position[arrival]!);
    }
    return new TreePair(walk, parents, parentRuns);
  }

  private meshPair(): Pair {
    const topology = {
      landingCount: this.bus.landings.length,
      from: this.runs.map((run) => run.from),
      to: this.runs.map((run) => run.to!),
    };
    return new MeshPair(topology, this.values(nominalCorner));
  }

  /** Why the levels at a landing cannot be computed, if they cannot. */
  missing(landing: LandingIndex): string | undefined {
    const component = this.shape.componentOf[landing]!;
    if (!this.incomplete.has(component)) return undefined;
    for (const run of this.runs) {
      if (this.shape.componentOf[run.from] !== component || run.length === 0) continue;
      const resistance = this.runResistance(run);
      if (isUnknown(resistance)) return resistance.unknown;
    }
    return missingLoads(this.bus, this.shape.components[component]!);
  }

  /** Whether anything biases the part of the bus that a landing is on. */
  isBiased(landing: LandingIndex): boolean {
    return this.biased.has(this.shape.componentOf[landing]!);
  }

  /** Whether cable leads from one landing to the other. */
  joined(one: LandingIndex, other: LandingIndex): boolean {
    return this.shape.componentOf[one] === this.shape.componentOf[other];
  }

  get crossedBias(): boolean {
    return this.biases.some(({ crossed }) => crossed);
  }

  /** Everything that hangs on the pair at a corner. */
  values(corner: Corner): PairValues {
    const loads = corner.load === 1 ? this.loads : this.loads.map(() => 0);
    const values = {
      resistances: this.wires[corner.run],
      across: this.terminators.map(
        (terminator, landing) => terminator / corner.terminator + corner.load * this.inputs[landing]!,
      ),
      plusToCommon: this.biases.length === 0 ? loads : [...loads],
      minusToCommon: this.biases.length === 0 ? loads : [...loads],
    };
    for (const { landing, up, down, crossed } of this.biases) {
      const { resistance } = crossed ? corner.crossed : corner.straight;
      const upper = crossed ? values.minusToCommon : values.plusToCommon;
      const lower = crossed ? values.plusToCommon : values.minusToCommon;
      if (corner.rail === 'joined') upper[landing]! += conductanceOf(up * resistance);
      lower[landing]! += conductanceOf(down * resistance);
    }
    return values;
  }

  /** What the powered bias networks drive into each wire at a corner. */
  biasCurrents(corner: Corner): PairCurrents {
    const plus = this.loads.map(() => 0);
    const minus = this.loads.map(() => 0);
    for (const { landing, up, supply, crossed } of this.biases) {
      const factors = crossed ? corner.crossed : corner.straight;
      (crossed ? minus : plus)[landing]! += supply * factors.supply * conductanceOf(up * factors.resistance);
    }
    return { plus, minus };
  }
}

const noResistance: Range<Ohms> = { nominal: ohms(0), low: ohms(0), high: ohms(0) };
