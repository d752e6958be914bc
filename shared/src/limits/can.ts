/** How long a CAN bus may be for its rate, what may hang on it, and what its nodes must drive. */
import type { CanGuideName } from '../catalogue.js';
import { type BitsPerSecond, type Metres, metres, type Ohms, type OhmsPerMetre, ohms } from '../quantity.js';
import type { Limit } from './limit.js';

/** A document's advice on lengths by rate; undefined where it has none for a rate. */
export interface CanGuide {
  readonly source: string;
  /** The line, from end to end. */
  length(rate: BitsPerSecond): Metres | undefined;
  /** One stub. */
  stub(rate: BitsPerSecond): Metres | undefined;
  /** All stubs together. */
  stubSum(rate: BitsPerSecond): Metres | undefined;
}

/** Bit/s, then metres of line, of one stub and of all stubs together. The fastest first. */
const ciaTable = [
  { rate: 1_000_000, length: 25, stub: 1.5, stubSum: 7.5 },
  { rate: 800_000, length: 50, stub: 2.5, stubSum: 12.5 },
  { rate: 500_000, length: 100, stub: 5.5, stubSum: 27.5 },
  { rate: 250_000, length: 250, stub: 11, stubSum: 55 },
  { rate: 125_000, length: 500, stub: 22, stubSum: 110 },
  { rate: 50_000, length: 1000, stub: 55, stubSum: 275 },
  { rate: 20_000, length: 2500, stub: 137.5, stubSum: 687.5 },
  { rate: 10_000, length: 5000, stub: 275, stubSum: 1375 },
] as const;

/** The row of the slowest rate that is no slower: between two rates the faster one's lengths hold. */
const ciaRow = (rate: number) => ciaTable.findLast((row) => rate <= row.rate);
const known = (value: number | undefined): Metres | undefined => (value === undefined ? undefined : metres(value));

/** The documents to choose from. */
export const canGuides = {
  cia: {
    source: 'CiA 301 and 102, bit timing table as on the CiA page on CANopen lower layers',
    length: (rate) => known(ciaRow(rate)?.length),
    stub: (rate) => known(ciaRow(rate)?.stub),
    stubSum: (rate) => known(ciaRow(rate)?.stubSum),
  },
  iso: {
    source:
      'ISO 11898 as quoted in TI SLOA101B (40 m and stubs of 0.3 m at 1 Mbit/s); TI SLLA486B (rate times length up to 50 Mbit/s m)',
    length: (rate) => (rate <= 500_000 ? metres(5e7 / rate) : rate <= 1e6 ? metres(40) : undefined),
    stub: (rate) => (rate <= 500_000 || 1e6 < rate ? undefined : metres(0.3)),
    stubSum: () => undefined,
  },
} as const satisfies Record<CanGuideName, CanGuide>;

/** Rates of the guides, for offers. */
export const canRates: readonly number[] = ciaTable.map(({ rate }) => rate);

/** Of classic CAN; what the faster data phase of later editions allows is not judged. */
export const fastestCan: Limit = {
  value: 1e6,
  meaning: 'the most that classic CAN runs at',
  source: 'ISO 11898-2, high-speed medium access unit, as quoted in TI SLOA101B',
  strength: 'guidance',
};

/** What the driver of a node must stand. */
export const leastCanLoad: Limit = {
  value: 45,
  meaning: 'the least resistance that a CAN driver must stand',
  source: 'Philips AN96116, section 4 (RL min)',
  strength: 'guidance',
};

/** Terminators that a document accepts: those of the standard at any length, larger ones on long lines. */
export const canTerminators = {
  low: ohms(100),
  nominal: ohms(120),
  high: ohms(130),
  /** From memory of CiA 303-1, which asks for up to 300 ohm beyond 40 m. */
  highWhenLong: ohms(300),
  longBeyond: metres(40),
  source: 'ISO 11898-2:2003 as reprinted (100 to 130 ohm); up to 300 ohm on long lines from memory of CiA 303-1',
};

interface WireClass {
  readonly upTo: Metres;
  readonly below: OhmsPerMetre;
}

/** Length classes of CiA 303-1 with the most that one conductor may resist per metre. */
const wireClasses: readonly WireClass[] = [
  { upTo: metres(40), below: 0.07 as OhmsPerMetre },
  { upTo: metres(300), below: 0.06 as OhmsPerMetre },
  { upTo: metres(600), below: 0.04 as OhmsPerMetre },
  { upTo: metres(1000), below: 0.026 as OhmsPerMetre },
];

/** The resistance of one conductor that a line of a length should stay below; undefined beyond the table. */
export function canWireLimit(length: Metres): (Limit & { readonly value: OhmsPerMetre }) | undefined {
  const found = wireClasses.find(({ upTo }) => length <= upTo);
  return (
    found && {
      value: found.below,
      meaning: `the most that a conductor should resist up to ${found.upTo} m`,
      source: 'from memory of CiA 303-1, for fewer than 64 nodes',
      strength: 'from memory',
    }
  );
}

/** Levels and loads behind the length table of AN96116: what its equation 11 starts from. */
export const canLevels = {
  /** The least that a driver gives, in volts. */
  leastDrive: 1.5,
  /** The most that a receiver needs to read a dominant bit, in volts. */
  mostThreshold: 1,
  /** Share of the distance between the two that is kept as a margin. */
  margin: 0.2,
  /** The least that a node resists between the wires. */
  leastInput: ohms(20_000) as Ohms,
  source: 'Philips AN96116, equation 11 and the values behind its table, as reprinted',
};
