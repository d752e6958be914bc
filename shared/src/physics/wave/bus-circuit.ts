/** A bus, with faults laid over it, as the circuit that waves travel in. */
import { joins } from '../../figures/walk.js';
import { isUnknown, type Range, type Unknown } from '../../known.js';
import type { Bus, Cable, LandingIndex, Run, Termination } from '../../network.js';
import type { Celsius } from '../../quantity.js';
import { missingLoads, portConductance } from '../loads.js';
import { eliminationFor } from './circuit-solver.js';
import type { Elimination } from './elimination.js';
import type { Fault } from './fault.js';
import { mediumOf } from './medium.js';
import {
  connectedTo,
  jointLength,
  type Line,
  type Medium,
  noMedium,
  type SeriesTermination,
  type WaveCircuit,
} from './wave-circuit.js';

/** One choice of every uncertain value; factors multiply the nominal one. */
export interface WaveCorner {
  readonly wires: keyof Range<number>;
  readonly impedance: number;
  readonly terminator: number;
  /** Share of the most that devices may load the pair with. */
  readonly load: number;
  readonly bias: { readonly resistance: number; readonly supply: number };
  /** Farads of a port that states none. */
  readonly portCapacitance: number;
}

/** Every value as it is written. */
export const asStated: WaveCorner = {
  wires: 'nominal',
  impedance: 1,
  terminator: 1,
  load: 1,
  bias: { resistance: 1, supply: 1 },
  portCapacitance: 0,
};

/** A short, terminator or bias network of less is computed as this: 1 uohm. */
const leastShort = 1e-6;
/** Keeps a pair without any load solvable: 1 Gohm at each landing, a hundred times what insulation leaks. */
const leastConductance = 1e-9;
/** A piece of a run between two nodes; landings come first among the nodes, then ends and faults. */
interface Piece {
  readonly from: number;
  readonly to: number;
  readonly length: number;
  readonly cable: Cable | undefined;
  readonly run: Run;
}

/** Of both resistors of a bias network; one that claims nothing is as good as a short. */
const biasResistance = (stated: number, { bias }: WaveCorner): number => Math.max(leastShort, stated * bias.resistance);

export class WaveBus {
  private pieces: Piece[] = [];
  private shorts: { readonly node: number; readonly conductance: number }[] = [];
  private readonly makers = new Map<Cable, (wires: keyof Range<number>) => Medium>();
  private nodeCount: number;
  private readonly terminations: (readonly Termination[])[];
  /** Per landing: -1 where the pair is the other way round, else 1. */
  readonly signs: readonly number[];
  /** Per landing: its node; the driver's is 0, and -1 is where no cable leads from the driver, faults regarded. */
  readonly nodes: Int32Array;
  private made?: Elimination;

  private constructor(
    private readonly bus: Bus,
    faults: readonly Fault[],
    readonly driver: LandingIndex,
  ) {
    this.nodeCount = bus.landings.length;
    this.terminations = bus.landings.map((landing) => landing.terminations);
    const signs = bus.landings.map(({ crossed }) => (crossed === undefined ? 1 : -1));
    for (const fault of faults) {
      if (fault.kind === 'terminators') this.terminations[fault.landing] = fault.terminations;
      if (fault.kind === 'crossed') signs[fault.landing]! *= -1;
    }
    this.signs = signs;
    for (const run of bus.runs) {
      // A run that comes back to where it starts, and one that ends nowhere, are lines too.
      if (!run.spare && (joins(run) || run.to === run.from || run.to === undefined)) this.addRun(run, faults);
    }
    const { numbers, count } = connectedTo(driver, this.nodeCount, this.pieces);
    this.nodes = numbers.slice(0, bus.landings.length);
    this.nodeCount = count;
    const renumbered = (piece: Piece) => ({ ...piece, from: numbers[piece.from]!, to: numbers[piece.to]! });
    this.pieces = this.pieces.filter(({ from }) => numbers[from] !== -1).map(renumbered);
    this.shorts = this.shorts
      .filter(({ node }) => numbers[node] !== -1)
      .map(({ node, conductance }) => ({ node: numbers[node]!, conductance }));
  }

  /** The bus as a circuit, or what is missing to make one. */
  static of(bus: Bus, temperature: Celsius, faults: readonly Fault[], driver: LandingIndex): WaveBus | Unknown {
    const made = new WaveBus(bus, faults, driver);
    for (const { cable, run, length } of made.pieces) {
      if (length < jointLength || (cable && made.makers.has(cable))) continue;
      if (!cable) return { unknown: `the cable of the run from ${bus.landings[run.from]!.name}` };
      const medium = mediumOf(cable, temperature);
      if (isUnknown(medium)) return medium;
      made.makers.set(cable, medium);
    }
    const reached = bus.landings.flatMap(({ index }) => (made.nodes[index] === -1 ? [] : [index]));
    if (reached.some((index) => portConductance(bus.kind, bus.landings[index]!) === undefined)) {
      return { unknown: missingLoads(bus, reached) };
    }
    return made;
  }

  private addRun(run: Run, faults: readonly Fault[]): void {
    let length: number = run.length;
    let cable = run.cable;
    const marks: { readonly at: number; readonly conductance?: number }[] = [];
    for (const fault of faults) {
      if (!('run' in fault) || fault.run !== run.index) continue;
      if (fault.kind === 'length') length = fault.length;
      else if (fault.kind === 'cable') cable = fault.cable;
      else {
        const at = Math.min(1, Math.max(0, fault.at));
        marks.push(fault.kind === 'open' ? { at } : { at, conductance: 1 / Math.max(leastShort, fault.resistance) });
      }
    }
    let node = run.from;
    let done = 0;
    const pull = (to: number, share: number) => {
      this.pieces.push({ from: node, to, length: (share - done) * length, cable, run });
    };
    for (const { at, conductance } of marks.sort((left, right) => left.at - right.at)) {
      const before = this.nodeCount++;
      pull(before, at);
      if (conductance !== undefined) this.shorts.push({ node: before, conductance });
      node = conductance === undefined ? this.nodeCount++ : before;
      done = at;
    }
    pull(run.to ?? this.nodeCount++, 1);
  }

  /** The circuit at a corner. */
  circuitAt(corner: WaveCorner): WaveCircuit {
    const { bus, nodeCount } = this;
    const media: Medium[] = [];
    const indices = new Map<Cable, number>();
    const lines: Line[] = [];
    for (const { from, to, length, cable } of this.pieces) {
      if (length < jointLength || !cable) {
        lines.push({ from, to, length: 0, medium: noMedium });
        continue;
      }
      let medium = indices.get(cable);
      if (medium === undefined) {
        medium = media.length;
        indices.set(cable, medium);
        const { inductance, capacitance, ...made } = this.makers.get(cable)!(corner.wires);
        const { impedance } = corner;
        media.push({ ...made, inductance: inductance * impedance, capacitance: capacitance / impedance });
      }
      lines.push({ from, to, length, medium });
    }
    const conductances = new Float64Array(nodeCount).fill(leastConductance);
    const capacitances = new Float64Array(nodeCount);
    const terminations: SeriesTermination[] = [];
    for (const landing of bus.landings) {
      const { index, splice, port } = landing;
      const node = this.nodes[index]!;
      const load = portConductance(bus.kind, landing);
      if (node === -1 || !load) continue;
      // From each wire to common: the pair sees two of them in a row.
      conductances[node]! += (load.across + load.toCommon / 2) * corner.load;
      capacitances[node] = splice === undefined ? (port?.capacitance ?? corner.portCapacitance) : 0;
      for (const { resistance, capacitance } of this.terminations[index]!) {
        const ohms = Math.max(leastShort, resistance * corner.terminator);
        if (capacitance === undefined) conductances[node]! += 1 / ohms;
        else terminations.push({ node, resistance: ohms, capacitance });
      }
    }
    for (const { landing, up, down } of bus.biases) {
      const node = landing === undefined ? -1 : this.nodes[landing]!;
      if (node !== -1) conductances[node]! += 1 / biasResistance(up + down, corner);
    }
    for (const { node, conductance } of this.shorts) conductances[node]! += conductance;
    return { nodeCount, media, lines, conductances, capacitances, terminations };
  }

  /** Amperes that bias networks put into the pair at each node, in the pair's own sense. */
  biasCurrents(corner: WaveCorner): Float64Array {
    const currents = new Float64Array(this.nodeCount);
    for (const { landing, up, down, supply } of this.bus.biases) {
      const node = landing === undefined ? -1 : this.nodes[landing]!;
      if (node === -1) continue;
      currents[node]! += (this.signs[landing!]! * supply * corner.bias.supply) / biasResistance(up + down, corner);
    }
    return currents;
  }

  /** The order in which its circuits are solved: the same at every corner. */
  get elimination(): Elimination {
    this.made ??= eliminationFor(this.circuitAt(asStated), 0);
    return this.made;
  }
}
