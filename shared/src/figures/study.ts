/**
 * Everything that is computed about one bus, each figure once and only when somebody asks.
 *
 * Rules, hovers, hints, the command line and documents all read a bus through its study, so that no number is
 * computed in two ways. A study belongs to one frozen network and is dropped with it.
 */
import { isUnknown, type Known, type Range, type Unknown } from '../known.js';
import { type CanGuide, canGuides } from '../limits/can.js';
import { endsWay } from '../limits/free-topology.js';
import type { Bus, Cable, Landing, Run, Store } from '../network.js';
import type { BusCircuit } from '../physics/circuit.js';
import { cableResistance, referenceTemperature, resistanceOfLength } from '../physics/conductor.js';
import { type ContactLoop, contactLoopOf } from '../physics/contact-loop.js';
import { cableVelocity, travelTime } from '../physics/delay.js';
import { idleLevels } from '../physics/levels.js';
import { unitLoadsOf } from '../physics/loads.js';
import { meterReadings } from '../physics/meter.js';
import { type Supply, supplyOf } from '../physics/supply.js';
import type { Celsius, LengthUnit, Metres, Ohms, OhmsPerMetre, Ratio, Seconds, Volts } from '../quantity.js';
import { formatLength, seconds } from '../quantity.js';
import { busCircuit, drivenLevels, missingCable } from './bus-circuit.js';
import { type Census, censusOf, headsOf } from './census.js';
import { delaysOf } from './delays.js';
import { type Link, linksOf } from './links.js';
import { longestWay, type Way } from './longest-way.js';
import { type Occasions, occasionsOf } from './occasions.js';
import { type RunCensus, runCensusOf } from './run-census.js';
import { type Shape, shapeOf } from './shape.js';
import type { Signal } from './signal.js';
import { loopResistanceOf, trunkLengthOf } from './trunk.js';

export { isUnknown, type Known, type Range, type Unknown } from '../known.js';
export type { Shape, Tap } from './shape.js';

export interface BusStudy {
  readonly store: Store;
  readonly bus: Bus;
  readonly shape: Shape;
  /** What occurs on it: for rules, which are soon done where it is nothing out of the ordinary. */
  readonly census: Census;
  /** What its runs come to. */
  readonly runCensus: RunCensus;
  /** What of it gives rules something to look at. */
  readonly occasions: Occasions;
  /** Sum of all runs, taps too, spares not. */
  readonly length: Metres;
  /** From end to end, taps aside; 0 for what is no chain. */
  readonly trunkLength: Metres;
  /** The longest way along the cable between two landings that are devices or terminated. */
  readonly farthest: Known<Way | undefined>;
  /** The links of an Ethernet bus, each of which stands alone. */
  readonly links: readonly Link[];
  /** The document that judges lengths on CAN: CiA's table where the bus names none. */
  readonly canGuide: CanGuide;
  /** The landing of the device with the role `head`, the first if several. */
  readonly head: Landing | undefined;
  readonly heads: readonly Landing[];
  /** Runs that are in the circuit, by their cable, in the order of the text. Runs of unknown cable are left out. */
  readonly runsByCable: ReadonlyMap<Cable, readonly Run[]>;
  /** Temperature that the cable is computed at. */
  readonly temperature: Celsius;
  /** Resistance of one conductor of a run at the bus's temperature. */
  runResistance(run: Run): Known<Range<Ohms>>;
  /** Time that the wave needs through a run. */
  runDelay(run: Run): Known<Seconds>;
  /** Out and back between the two ends, terminators aside. */
  readonly loopResistance: Known<Range<Ohms>>;
  /** Sum of the unit loads of all ports; unknown names the devices that state none. */
  readonly unitLoads: Known<Ratio>;
  /**
   * What an ohmmeter reads across the pair at each landing with everything connected and nothing powered; infinite
   * where the pair is open to direct current. `nominal` is also what a driver there works into. A contact loop is lifted
   * off its input for it.
   */
  readonly meter: readonly Known<Range<Ohms>>[];
  /**
   * Plus minus minus with every driver off, as the device at each landing sees it; 0 where nothing biases.
   */
  readonly idle: readonly Known<Range<Volts>>[];
  /**
   * What each landing sees while the head drives against the bias with the least that TIA-485-A asks of a driver
   * (1.5 V); unknown where no head is or where it works into less than the standard's 54 ohm. On CAN, where everybody
   * drives, the dominant level of the end that reaches the landing more weakly.
   */
  readonly driven: readonly Known<Range<Volts>>[];
  /** Voltages and currents of a supply; unknown for any other kind. */
  readonly supply: Known<Supply>;
  /** What the input of a contact loop sees; unknown for any other kind. */
  readonly contactLoop: Known<ContactLoop>;
  /** Propagation delay from where {@link Shape.distance} counts. */
  readonly delay: readonly Known<Seconds>[];
  /** Time of one bit; unknown without a rate. */
  readonly bitTime: Known<Seconds>;
  /** What is left of the signal and what would mend it; unknown where the options say nobody who tells. */
  readonly signal: Known<Signal>;
  /** A length in the unit of this bus's text (or of the reader's choice). */
  readonly lengthText: (length: Metres) => string;
}

export interface StudyOptions {
  /** Show lengths in this unit instead of the one that the bus's text uses most. */
  readonly lengthUnit?: LengthUnit;
  /** Who tells signals: `signalOf` at once, or somebody who has them simulated meanwhile. */
  readonly signal?: (study: BusStudy) => Known<Signal>;
}

/** A study of one bus. It computes nothing before it is asked. */
export function createStudy(store: Store, bus: Bus, options: StudyOptions = {}): BusStudy {
  return new LazyStudy(store, bus, options);
}

class LazyStudy implements BusStudy {
  private readonly perMetre = new Map<Cable, Known<Range<OhmsPerMetre>>>();
  // What was computed, once it was.
  private madeShape?: Shape;
  private madeCensus?: Census;
  private madeOccasions?: Occasions;
  private madeRunCensus?: RunCensus;
  private madeTrunkLength?: Metres;
  private madeFarthest?: Known<Way | undefined>;
  private madeLinks?: readonly Link[];
  private madeHeads?: readonly Landing[];
  private madeLoop?: Known<Range<Ohms>>;
  private madeLoads?: Known<Ratio>;
  private madeCircuit?: BusCircuit | Unknown;
  private madeMeter?: readonly Known<Range<Ohms>>[];
  private madeIdle?: readonly Known<Range<Volts>>[];
  private madeDriven?: readonly Known<Range<Volts>>[];
  private madeSupply?: Known<Supply>;
  private madeContactLoop?: Known<ContactLoop>;
  private madeDelay?: readonly Known<Seconds>[];
  private madeSignal?: Known<Signal>;

  constructor(
    readonly store: Store,
    readonly bus: Bus,
    private readonly options: StudyOptions,
  ) {}

  get shape(): Shape {
    this.madeShape ??= shapeOf(this.bus, this.runCensus);
    return this.madeShape;
  }

  get census(): Census {
    this.madeCensus ??= censusOf(this.bus);
    return this.madeCensus;
  }

  get runCensus(): RunCensus {
    this.madeRunCensus ??= runCensusOf(this.bus);
    return this.madeRunCensus;
  }

  get occasions(): Occasions {
    this.madeOccasions ??= occasionsOf(this);
    return this.madeOccasions;
  }

  get length(): Metres {
    return this.runCensus.length;
  }

  get trunkLength(): Metres {
    this.madeTrunkLength ??= trunkLengthOf(this);
    return this.madeTrunkLength;
  }

  get farthest(): Known<Way | undefined> {
    this.madeFarthest ??= longestWay(this.bus, this.shape, {
      run: ({ length }) => length,
      end: (landing) => (endsWay(this.bus.landings[landing]!) ? 0 : undefined),
    });
    return this.madeFarthest;
  }

  get links(): readonly Link[] {
    this.madeLinks ??= this.bus.kind === 'ethernet' ? linksOf(this.bus) : [];
    return this.madeLinks;
  }

  get canGuide(): CanGuide {
    return canGuides[this.bus.guide?.value ?? 'cia'];
  }

  get heads(): readonly Landing[] {
    this.madeHeads ??= headsOf(this.census);
    return this.madeHeads;
  }

  get head(): Landing | undefined {
    return this.heads[0];
  }

  get runsByCable(): ReadonlyMap<Cable, readonly Run[]> {
    return this.runCensus.byCable;
  }

  get temperature(): Celsius {
    return this.bus.ambient?.value ?? referenceTemperature;
  }

  runResistance(run: Run): Known<Range<Ohms>> {
    const { cable } = run;
    if (!cable) return { unknown: missingCable(this.bus, run) };
    let perMetre = this.perMetre.get(cable);
    if (!perMetre) {
      perMetre = cableResistance(cable, this.temperature);
      this.perMetre.set(cable, perMetre);
    }
    return resistanceOfLength(perMetre, run.length);
  }

  runDelay(run: Run): Known<Seconds> {
    if (!run.cable) return { unknown: missingCable(this.bus, run) };
    const velocity = cableVelocity(run.cable);
    return isUnknown(velocity) ? velocity : travelTime(run.length, velocity);
  }

  get loopResistance(): Known<Range<Ohms>> {
    this.madeLoop ??= loopResistanceOf(this);
    return this.madeLoop;
  }

  get unitLoads(): Known<Ratio> {
    this.madeLoads ??= unitLoadsOf(this);
    return this.madeLoads;
  }

  private everywhere<T>(compute: (circuit: BusCircuit) => readonly Known<T>[]): readonly Known<T>[] {
    this.madeCircuit ??= busCircuit(this);
    const circuit = this.madeCircuit;
    return isUnknown(circuit) ? this.bus.landings.map(() => circuit) : compute(circuit);
  }

  private levels(compute: (circuit: BusCircuit) => readonly Known<Range<Volts>>[]): readonly Known<Range<Volts>>[] {
    if (this.bus.kind !== 'free-topology') return this.everywhere(compute);
    return this.bus.landings.map(() => ({ unknown: 'direct levels: free topology has none' }));
  }

  get meter(): readonly Known<Range<Ohms>>[] {
    this.madeMeter ??= this.bus.kind === 'contact-loop' ? this.loopMeter() : this.everywhere(meterReadings);
    return this.madeMeter;
  }

  private loopMeter(): readonly Known<Range<Ohms>>[] {
    const loop = this.contactLoop;
    return isUnknown(loop) ? this.bus.landings.map(() => loop) : loop.meter;
  }

  get supply(): Known<Supply> {
    const { bus } = this;
    this.madeSupply ??=
      bus.kind === 'supply'
        ? supplyOf(bus, this.shape, (run) => this.runResistance(run))
        : { unknown: 'the voltages: the bus is no supply' };
    return this.madeSupply;
  }

  get contactLoop(): Known<ContactLoop> {
    const { bus } = this;
    this.madeContactLoop ??=
      bus.kind === 'contact-loop'
        ? contactLoopOf(bus, (run) => this.runResistance(run))
        : { unknown: 'the states: the bus is no contact loop' };
    return this.madeContactLoop;
  }

  get idle(): readonly Known<Range<Volts>>[] {
    this.madeIdle ??= this.levels(idleLevels);
    return this.madeIdle;
  }

  get driven(): readonly Known<Range<Volts>>[] {
    this.madeDriven ??= this.levels((circuit) => drivenLevels(this, circuit));
    return this.madeDriven;
  }

  get delay(): readonly Known<Seconds>[] {
    this.madeDelay ??= delaysOf(this);
    return this.madeDelay;
  }

  get signal(): Known<Signal> {
    this.madeSignal ??= this.options.signal?.(this) ?? { unknown: 'the signal, for which nobody has asked' };
    return this.madeSignal;
  }

  get bitTime(): Known<Seconds> {
    const rate = this.bus.rate?.value;
    return rate !== undefined && 0 < rate ? seconds(1 / rate) : { unknown: 'the rate of the bus' };
  }

  readonly lengthText = (length: Metres): string =>
    formatLength(length, this.options.lengthUnit ?? this.bus.lengthUnit);
}
