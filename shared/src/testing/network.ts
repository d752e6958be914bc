/**
 * Networks for tests, written by hand in a few words:
 *
 *     const { study } = busOf('modbus-rtu', { cable: testCable() })
 *       .from('head', { device: headDevice, terminate: 120 })
 *       .to('a', 10, { address: 1 })
 *       .tap('probe', 2)
 *       .to('b', 25, { terminate: 120 })
 *       .bias('head', 510)
 *       .built();
 *
 * Lengths are metres, resistances ohms. Every part gets a place of its own, in the order in which it is written.
 */
import { type BusStudy, createStudy } from '../figures/study.js';
import type {
  Bus,
  BusBias,
  BusKind,
  Cable,
  Device,
  Landing,
  LandingTermination,
  Pen,
  Place,
  Run,
  ShieldTreatment,
  Store,
  StoreNode,
  Visit,
} from '../network.js';
import { bitsPerSecond, celsius, type LengthUnit, metres, ohms, volts } from '../quantity.js';
import { nodeDevice, testCable } from './catalogue.js';

export * from './catalogue.js';

const file = 'test.pair';

/** What can be said of a landing when it is first visited. */
export interface LandingWords {
  /** {@link nodeDevice} when left out; null for a landing whose device is not known. */
  readonly device?: Device | null;
  readonly address?: number;
  /** One resistor or several; R-C ones as objects. */
  readonly terminate?: number | readonly LandingTermination[];
  readonly crossed?: boolean;
  readonly shield?: ShieldTreatment;
  readonly splice?: boolean;
}

export interface RunWords {
  readonly cable?: Cable | null;
  readonly spare?: boolean;
  readonly built?: number;
}

export interface BusWords {
  readonly name?: string;
  /** {@link testCable} when left out; null for none. */
  readonly cable?: Cable | null;
  readonly rate?: number;
  readonly ambient?: number;
  readonly lengthUnit?: LengthUnit;
}

export interface BuiltBus {
  readonly store: Store;
  readonly bus: Bus;
  readonly study: BusStudy;
  /** A landing by its name. */
  landing(name: string): Landing;
}

/** Starts a bus. */
export function busOf(kind: BusKind | undefined, words: BusWords = {}): BusBuilder {
  return new BusBuilder(kind, words);
}

type Draft = Omit<Landing, 'visits' | 'runs'> & { readonly visits: Visit[]; readonly runs: number[] };

export class BusBuilder {
  private offset = 1;
  private readonly nodes: StoreNode[] = [];
  private readonly landings: Draft[] = [];
  private readonly indices = new Map<string, number>();
  private readonly runs: Run[] = [];
  private readonly pens: Pen[] = [];
  private readonly biases: BusBias[] = [];
  private readonly earths: { landing: number; place: Place }[] = [];
  private pen = -1;
  private readonly cable: Cable | undefined;

  constructor(
    private readonly kind: BusKind | undefined,
    private readonly words: BusWords,
  ) {
    this.cable = words.cable === null ? undefined : (words.cable ?? testCable());
  }

  /** Puts the pen on a landing. */
  from(name: string, words: LandingWords = {}): this {
    const place = this.nextPlace();
    this.pen = this.visit(name, 'from', place, words);
    this.pens.push({ landing: this.pen, place });
    return this;
  }

  /** Pulls a run from the pen and moves the pen. */
  to(name: string, length: number, words: LandingWords & RunWords = {}): this {
    const place = this.nextPlace();
    const target = this.visit(name, 'to', place, words);
    this.pull(place, length, target, false, words);
    this.pen = target;
    return this;
  }

  /** Pulls a run from the pen and leaves the pen. */
  tap(name: string, length: number, words: LandingWords & RunWords = {}): this {
    const place = this.nextPlace();
    this.pull(place, length, this.visit(name, 'tap', place, words), true, words);
    return this;
  }

  /** Pulls a run that ends nowhere. */
  loose(length: number, words: RunWords & { readonly tap?: boolean } = {}): this {
    this.pull(this.nextPlace(), length, undefined, words.tap ?? false, words);
    return this;
  }

  /** Both resistors, or the one up from plus and the one down from minus. */
  bias(name: string, up: number, down = up, supply = 5): this {
    this.biases.push({
      landing: this.indexOf(name),
      up: ohms(up),
      down: ohms(down),
      supply: volts(supply),
      place: this.nextPlace(),
      builtIn: false,
    });
    return this;
  }

  /** Earths the shield. */
  earth(name: string): this {
    this.earths.push({ landing: this.indexOf(name), place: this.nextPlace() });
    return this;
  }

  built(): BuiltBus {
    const { words, kind, cable, landings } = this;
    const bus: Bus = {
      index: 0,
      name: words.name ?? 'tested',
      place: this.nextPlace(),
      blockPlace: { file, start: 0, end: this.offset },
      endPlace: this.nextPlace(),
      ...(kind && { kind, kindPlace: this.nextPlace() }),
      ...(words.rate !== undefined && { rate: { value: bitsPerSecond(words.rate), place: this.nextPlace() } }),
      ...(cable && { cable, cablePlace: this.nextPlace() }),
      ...(words.ambient !== undefined && { ambient: { value: celsius(words.ambient), place: this.nextPlace() } }),
      landings,
      runs: this.runs,
      pens: this.pens,
      areas: [],
      earths: this.earths,
      biases: this.biases,
      lengthUnit: words.lengthUnit ?? 'm',
      damaged: false,
      unclear: false,
      biasUnclear: false,
    };
    const store: Store = {
      name: 'testStore',
      place: this.nextPlace(),
      nodes: this.nodes,
      buses: [bus],
      networks: [],
      waivers: [],
      choices: { cables: [], repeaters: [] },
    };
    return {
      store,
      bus,
      study: createStudy(store, bus),
      landing: (name) => landings[this.indexOf(name)]!,
    };
  }

  private nextPlace(): Place {
    this.offset += 10;
    return { file, start: this.offset, end: this.offset + 5 };
  }

  private indexOf(name: string): number {
    const index = this.indices.get(name);
    if (index === undefined) throw new Error(`the test names a landing ${name} that is not there`);
    return index;
  }

  private visit(name: string, statement: Visit['statement'], statementPlace: Place, words: LandingWords): number {
    const place = this.nextPlace();
    const visit: Visit = { place, referencePlace: place, statement, statementPlace };
    const known = this.indices.get(name);
    if (known !== undefined) {
      this.landings[known]!.visits.push(visit);
      return known;
    }
    const index = this.landings.length;
    this.indices.set(name, index);
    this.landings.push({
      index,
      ...(words.splice ? { splice: name } : this.nodeOf(name, place, words.device)),
      name,
      place,
      visits: [visit],
      ...(words.address !== undefined && { address: { value: words.address, place: this.nextPlace() } }),
      otherAddresses: [],
      terminations: this.terminationsOf(words.terminate),
      terminatorUnclear: false,
      ...(words.crossed && { crossed: this.nextPlace() }),
      shield: words.shield ?? 'through',
      runs: [],
    });
    return index;
  }

  private nodeOf(name: string, place: Place, device: Device | null = nodeDevice): Pick<Landing, 'node' | 'port'> {
    const node: StoreNode = { name, place, ...(device && { device, devicePlace: place }) };
    this.nodes.push(node);
    const port = device?.ports[0];
    return { node, ...(port && { port }) };
  }

  private terminationsOf(terminate: LandingWords['terminate'] = []): readonly LandingTermination[] {
    if (typeof terminate !== 'number') return terminate;
    return [{ means: 'resistor', resistance: ohms(terminate), place: this.nextPlace() }];
  }

  private pull(place: Place, length: number, to: number | undefined, tap: boolean, words: RunWords): void {
    const index = this.runs.length;
    const cable = words.cable === null ? undefined : (words.cable ?? this.cable);
    this.runs.push({
      index,
      from: this.pen,
      ...(to !== undefined && { to }),
      place,
      lengthPlace: this.nextPlace(),
      length: metres(words.built ?? length),
      planned: metres(length),
      ...(words.built !== undefined && { built: { value: metres(words.built), place: this.nextPlace() } }),
      ...(cable && { cable }),
      tap,
      spare: words.spare ?? false,
    });
    if (words.spare) return;
    for (const landing of new Set([this.pen, to ?? this.pen])) this.landings[landing]!.runs.push(index);
  }
}
