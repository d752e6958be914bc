/** The computed numbers of stores in SI units, for every format; a study of the engine computes each of them. */
import { type BusKind, type BusStudy, isUnknown, type Known, type LandingIndex, type Range } from '@fieldpair/shared';

/** Null where a bound is infinite, as it is across an open pair. */
export interface RangeFigure {
  readonly nominal: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

/** A figure that cannot be computed is null, and `unknown` says by its name why. */
export interface LandingFigures {
  readonly landing: string;
  readonly address: number | null;
  readonly distance_m: number | null;
  readonly meter_ohm: RangeFigure | null;
  readonly idle_v: RangeFigure | null;
  readonly driven_v: RangeFigure | null;
  readonly delay_ns: number | null;
  readonly unknown?: Readonly<Record<string, string>>;
}

export interface BusFigures {
  readonly bus: string;
  readonly kind: string | null;
  readonly length_m: number;
  readonly loop_resistance_ohm: number | null;
  readonly unit_loads: number | null;
  readonly ends: readonly [string, string] | null;
  readonly landings: readonly LandingFigures[];
  readonly unknown?: Readonly<Record<string, string>>;
}

/** Keeps why figures are unknown while it takes them over. */
class Figures {
  readonly #reasons: Record<string, string> = {};

  take<T, U>(name: string, value: Known<T>, figure: (known: T) => U): U | null {
    if (!isUnknown(value)) return figure(value);
    this.#reasons[name] = value.unknown;
    return null;
  }

  range(name: string, value: Known<Range<number>>): RangeFigure | null {
    return this.take(name, value, ({ nominal, low, high }) => {
      const range = { nominal: finite(nominal), low: finite(low), high: finite(high) };
      if (Object.values(range).includes(null)) this.#reasons[name] = 'infinite: the pair is open to direct current';
      return range;
    });
  }

  get unknown(): { readonly unknown?: Readonly<Record<string, string>> } {
    return Object.keys(this.#reasons).length ? { unknown: this.#reasons } : {};
  }
}

/** Without the last digits, which binary fractions blur: nine are more than any figure is sure of. */
const rounded = (value: number) => Number(value.toPrecision(9));
const finite = (value: number) => (Number.isFinite(value) ? rounded(value) : null);

export function busFigures(study: BusStudy): BusFigures {
  const { bus, shape } = study;
  const figures = new Figures();
  const name = (landing: LandingIndex) => bus.landings[landing]!.name;
  const kind: Known<BusKind> = bus.kind ?? { unknown: 'the text names no kind of bus that exists' };
  const ends: Known<readonly [LandingIndex, LandingIndex]> = shape.ends ?? { unknown: 'the bus is no single chain' };
  return {
    bus: bus.name,
    kind: figures.take('kind', kind, (known) => known),
    length_m: rounded(study.length),
    loop_resistance_ohm: figures.take('loop_resistance_ohm', study.loopResistance, ({ nominal }) => rounded(nominal)),
    unit_loads: figures.take('unit_loads', study.unitLoads, rounded),
    ends: figures.take('ends', ends, ([first, second]) => [name(first), name(second)] as const),
    landings: bus.landings.map(({ index }) => landingFigures(study, index)),
    ...figures.unknown,
  };
}

function landingFigures(study: BusStudy, index: LandingIndex): LandingFigures {
  const { name, address } = study.bus.landings[index]!;
  const figures = new Figures();
  const first = study.bus.landings[0]!.name;
  const distance: Known<number> = study.shape.distance[index] ?? { unknown: `no cable joins it to ${first}` };
  return {
    landing: name,
    address: address?.value ?? null,
    distance_m: figures.take('distance_m', distance, rounded),
    meter_ohm: figures.range('meter_ohm', study.meter[index]!),
    idle_v: figures.range('idle_v', study.idle[index]!),
    driven_v: figures.range('driven_v', study.driven[index]!),
    delay_ns: figures.take('delay_ns', study.delay[index]!, (delay) => rounded(delay * 1e9)),
    ...figures.unknown,
  };
}
