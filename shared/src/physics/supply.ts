/**
 * What a supply gives at each of its loads: the voltage there and the current in each run.
 *
 * Alternating currents are counted as if all were in phase, which drops the most; the reactance of a pair at mains
 * frequency is far below its resistance. Least are voltages with the source at its least, every load drawing all that it
 * may and a warm cable that resists its most; most with the source at its most and nothing drawn. Inrush is no part of
 * it: what a load draws as it is switched on, nothing here tells.
 */
import type { Shape } from '../figures/shape.js';
import { joins } from '../figures/walk.js';
import { isUnknown, type Known, type Range } from '../known.js';
import type { Bus, Landing, LandingIndex, Run, SupplyLoad, SupplySource } from '../network.js';
import { type Amperes, amperes, type Celsius, type Ohms, type Volts, volts, type Watts, watts } from '../quantity.js';
import { mostLoops } from './circuit.js';
import { cableResistance, resistanceOfLength } from './conductor.js';
import { type Draw, type FedSolution, FedTree } from './fed-tree.js';
import { lowered, raised, supplyTolerance, warmCable } from './tolerance.js';

/** One source and the part of the bus that it feeds. */
export interface Feed {
  readonly landing: Landing;
  readonly source: SupplySource;
  readonly loads: readonly { readonly landing: Landing; readonly load: SupplyLoad }[];
  /** What the source gives, what of it the cable turns into heat: with stated loads, and at the worst. */
  readonly given: Known<Range<Amperes>>;
  readonly power: Known<Range<Watts>>;
  readonly heat: Known<Range<Watts>>;
  /** No voltage satisfies its loads: never, or only at the worst. */
  readonly collapses?: 'always' | 'at the worst';
}

export interface Supply {
  readonly feeds: readonly Feed[];
  /** Per landing. */
  readonly volts: readonly Known<Range<Volts>>[];
  /** Per run, whichever way it flows: none where nothing is drawn, and the most at the worst. */
  readonly amperes: readonly Known<Range<Amperes>>[];
}

/** The tolerance of a source, stated or usual. */
export const toleranceOf = ({ tolerance }: SupplySource): number => tolerance ?? supplyTolerance;

/** Amperes and watts that a port draws. */
export const drawOf = (load: SupplyLoad | undefined): Draw => {
  const amount = load?.amount;
  if (!amount) return { amperes: 0, watts: 0 };
  return 'amperes' in amount ? { amperes: amount.amperes, watts: 0 } : { amperes: 0, watts: amount.watts };
};

export function supplyOf(bus: Bus, shape: Shape, runResistance: (run: Run) => Known<Range<Ohms>>): Supply {
  const voltages: Known<Range<Volts>>[] = bus.landings.map(() => noVoltage);
  const currents: Known<Range<Amperes>>[] = bus.runs.map(() => noCurrent);
  const feeds: Feed[] = [];
  const runs: Run[][] = shape.components.map(() => []);
  for (const run of bus.runs) if (joins(run)) runs[shape.componentOf[run.from]!]!.push(run);
  for (const [index, component] of shape.components.entries()) {
    const part = new FedPart(bus, shape, component, runs[index]!, runResistance);
    const { unknown } = part;
    const solved = unknown === undefined ? part.solve() : { unknown };
    for (const [position, landing] of component.entries()) {
      voltages[landing] = isUnknown(solved) ? solved : solved.volts[position]!;
    }
    for (const [position, run] of part.runs.entries()) {
      currents[run.index] = isUnknown(solved) ? solved : solved.amperes[position]!;
    }
    feeds.push(...part.feeds(solved));
  }
  return { feeds, volts: voltages, amperes: currents };
}

const noVoltage: Range<Volts> = { nominal: volts(0), low: volts(0), high: volts(0) };
const noCurrent: Range<Amperes> = { nominal: amperes(0), low: amperes(0), high: amperes(0) };

interface SolvedPart {
  readonly nominal: FedSolution;
  /** Undefined where the voltage collapses at the worst. */
  readonly worst: FedSolution | undefined;
  readonly volts: readonly Range<Volts>[];
  readonly amperes: readonly Known<Range<Amperes>>[];
}

/** Landings that cable joins, with whatever feeds them. */
class FedPart {
  private readonly sources: readonly Landing[];
  private readonly positions: ReadonlyMap<LandingIndex, number>;
  private collapses: Feed['collapses'];

  constructor(
    private readonly bus: Bus,
    private readonly shape: Shape,
    private readonly component: readonly LandingIndex[],
    readonly runs: readonly Run[],
    private readonly runResistance: (run: Run) => Known<Range<Ohms>>,
  ) {
    this.sources = component.map((index) => bus.landings[index]!).filter(({ port }) => port?.supplies);
    this.positions = new Map(component.map((index, position) => [index, position]));
  }

  /** Why nothing can be computed, if it cannot. */
  get unknown(): string | undefined {
    const [first, second] = this.sources;
    if (!first) return 'what feeds it: no landing here is a source';
    if (second) return `how ${first.name} and ${second.name} share the loads: both are sources`;
    if (mostLoops < this.shape.closing.length) return `the currents of ${this.shape.closing.length} loops`;
    for (const index of this.component) {
      const { splice, port, name } = this.bus.landings[index]!;
      if (splice === undefined && !port?.supplies && !port?.draws) return `what ${name} draws`;
    }
    for (const run of this.runs) {
      const resistance = this.runResistance(run);
      if (isUnknown(resistance)) return resistance.unknown;
    }
    return undefined;
  }

  solve(): Known<SolvedPart> {
    const [{ index, port }] = this.sources as [Landing];
    const source = port!.supplies!;
    const tolerance = toleranceOf(source);
    const positionOf = (landing: LandingIndex) => this.positions.get(landing)!;
    const tree = new FedTree({
      landingCount: this.component.length,
      source: positionOf(index),
      from: this.runs.map((run) => positionOf(run.from)),
      to: this.runs.map((run) => positionOf(run.to!)),
    });
    const draws = this.component.map((landing) => drawOf(this.bus.landings[landing]!.port?.draws));
    const stated = this.runs.map((run) => 2 * known(this.runResistance(run)).nominal);
    const nominal = tree.solve(source.voltage, stated, draws);
    if (!nominal) {
      this.collapses = 'always';
      return { unknown: 'a voltage at which the loads get what they ask for' };
    }
    const warm = this.runs.map((run) => 2 * known(this.warmResistance(run)).high);
    const worst = tree.solve(lowered(source.voltage, tolerance), warm, draws);
    if (!worst) this.collapses = 'at the worst';
    const high = volts(raised(source.voltage, tolerance));
    return {
      nominal,
      worst,
      volts: nominal.volts.map((voltage, position) => ({
        nominal: volts(voltage),
        low: volts(worst?.volts[position] ?? 0),
        high,
      })),
      amperes: nominal.amperes.map((current, position) => {
        if (!worst) return { unknown: 'the most current: at the worst the voltage collapses' };
        return currentRange(current, worst.amperes[position]!);
      }),
    };
  }

  private warmResistance(run: Run): Known<Range<Ohms>> {
    const temperature: Celsius = this.bus.ambient?.value ?? warmCable;
    return run.cable ? resistanceOfLength(cableResistance(run.cable, temperature), run.length) : noResistance;
  }

  feeds(solved: Known<SolvedPart>): Feed[] {
    const loads = this.component.flatMap((index) => {
      const landing = this.bus.landings[index]!;
      const load = landing.port?.draws;
      return load ? [{ landing, load }] : [];
    });
    return this.sources.map((landing) => {
      const source = landing.port!.supplies!;
      const { collapses } = this;
      return {
        landing,
        source,
        loads,
        ...this.givenBy(landing.index, source, loads, solved),
        ...(collapses && { collapses }),
      };
    });
  }

  private givenBy(
    index: LandingIndex,
    source: SupplySource,
    loads: Feed['loads'],
    solved: Known<SolvedPart>,
  ): Pick<Feed, 'given' | 'power' | 'heat'> {
    if (isUnknown(solved)) return { given: solved, power: solved, heat: solved };
    const { nominal, worst } = solved;
    if (!worst) {
      const unknown = { unknown: 'the most that is drawn: at the worst the voltage collapses' };
      return { given: unknown, power: unknown, heat: unknown };
    }
    const given = (solution: FedSolution) =>
      this.runs.reduce((sum, run, position) => {
        const current = solution.amperes[position]!;
        return sum + (run.from === index ? current : run.to === index ? -current : 0);
      }, 0);
    const used = (solution: FedSolution) =>
      loads.reduce((sum, { landing, load }) => {
        const draw = drawOf(load);
        return sum + draw.watts + draw.amperes * solution.volts[this.positions.get(landing.index)!]!;
      }, 0);
    const least = lowered(source.voltage, toleranceOf(source));
    const most = raised(source.voltage, toleranceOf(source));
    const range = currentRange(given(nominal), given(worst));
    return {
      given: range,
      // A fixed current takes the most power where the voltage is at its most.
      power: {
        nominal: watts(range.nominal * source.voltage),
        low: watts(0),
        high: watts(Math.max(range.high * least, range.nominal * most)),
      },
      heat: {
        nominal: watts(Math.max(0, range.nominal * source.voltage - used(nominal))),
        low: watts(0),
        high: watts(Math.max(0, range.high * least - used(worst))),
      },
    };
  }
}

const noResistance = { nominal: 0 as Ohms, low: 0 as Ohms, high: 0 as Ohms };

/** A resistance that was found to be known before. */
const known = (resistance: Known<Range<Ohms>>): Range<Ohms> => (isUnknown(resistance) ? noResistance : resistance);

/** At least nothing, where the loads are off. */
function currentRange(nominal: number, worst: number): Range<Amperes> {
  const [stated, most] = [Math.abs(nominal), Math.abs(worst)];
  return { nominal: amperes(stated), low: amperes(0), high: amperes(Math.max(stated, most)) };
}
