/**
 * Drivers as the line sees them: a voltage behind a resistance, from the least to the most that standards allow.
 *
 * **RS-485.** The least driver gives 1.5 V into 54 ohm (TIA-485-A) and 2 V into 100 ohm (TIA-422-B, from memory; the
 * pair of points that data sheets guarantee): 3.29 V behind 64.3 ohm. The most gives 5 V into 54 ohm and 6 V open
 * (TIA-485-A): 6 V behind 10.8 ohm. A usual one is taken as 5 V behind the resistance of the least: common practice,
 * no published source.
 *
 * **CAN.** Dominant: the least is 1.5 V into 50 ohm, the usual 2 V into 60 ohm, the most 3 V into 65 ohm and 5 V into
 * 2240 ohm (ISO 11898-2, from memory), all behind the resistance that the last two points tell. Recessive: the driver
 * lets go, and its resistance is gone too.
 */
import { type BusKind, rs485Kinds } from '../../network.js';
import { type Ohms, ohms, type Seconds, seconds, type Volts, volts } from '../../quantity.js';
import { driverTestLoad, leastDrive, receiverThreshold } from '../transceiver.js';

/** A driver's Thevenin equivalent: its voltage without load, and its output resistance. */
export interface DriverModel {
  readonly open: Volts;
  readonly output: Ohms;
}

export type DriverGrade = 'least' | 'usual' | 'most';

/** The driver that gives two voltages into two loads. */
export function driverThrough(
  first: { volts: number; into: number },
  second: { volts: number; into: number },
): DriverModel {
  const output = (second.volts - first.volts) / (first.volts / first.into - second.volts / second.into);
  return { open: volts(first.volts * (1 + output / first.into)), output: ohms(output) };
}

const leastPair = driverThrough({ volts: leastDrive, into: driverTestLoad }, { volts: 2, into: 100 });
const rs485Drivers: Readonly<Record<DriverGrade, DriverModel>> = {
  least: leastPair,
  usual: { open: volts(5), output: leastPair.output },
  most: { open: volts(6), output: ohms(driverTestLoad * (6 / 5 - 1)) },
};

const mostDominant = driverThrough({ volts: 3, into: 65 }, { volts: 5, into: 2240 });
const dominant = (level: number, into: number): DriverModel => ({
  open: volts(level * (1 + mostDominant.output / into)),
  output: mostDominant.output,
});
const canDrivers: Readonly<Record<DriverGrade, DriverModel>> = {
  least: dominant(1.5, 50),
  usual: dominant(2, 60),
  most: mostDominant,
};

/** What the wave needs to know of a kind of bus. */
export interface Signalling {
  readonly drivers: Readonly<Record<DriverGrade, DriverModel>>;
  readonly threshold: { readonly high: Volts; readonly low: Volts };
  /** Both bits are driven, or one is and for the other the driver lets go. */
  readonly driven: 'both bits' | 'dominant bit';
  /**
   * How many levels a bit is made of, one after the other. The direct mode of ISO/IEC 14908 codes bits as differential
   * Manchester (from memory of transceiver data books): the level changes at the start of every bit, and halfway
   * through a 0 once more. Each half is then read like a bit of half the time.
   */
  readonly levelsPerBit: 1 | 2;
  /** The slowest 10 to 90 % transition of drivers for such a bus, where nothing states it. */
  readonly slowestEdge: Seconds;
}

/** ISO 11898-2: at or above 0.9 V dominant, at or below 0.5 V recessive. */
const canThreshold = { high: volts(0.9), low: volts(0.5) };

/** The slowest slew-limited drivers, those for 115 kbit/s: from memory of their data sheets. */
const slowestEdge = seconds(2.5e-6);

/** High-speed CAN transceivers, which all are made for 1 Mbit/s: from memory of their data sheets. */
const slowestCanEdge = seconds(100e-9);

export function signallingOf(kind: BusKind | undefined): Signalling | undefined {
  return kind === undefined ? undefined : signalling.get(kind);
}

const rs485Signalling: Signalling = {
  drivers: rs485Drivers,
  threshold: { high: receiverThreshold, low: volts(-receiverThreshold) },
  driven: 'both bits',
  levelsPerBit: 1,
  slowestEdge,
};
const signalling: ReadonlyMap<BusKind, Signalling> = new Map<BusKind, Signalling>([
  ...[...rs485Kinds].map((kind) => [kind, rs485Signalling] as const),
  ['peer-485', { ...rs485Signalling, levelsPerBit: 2 }],
  [
    'can',
    {
      drivers: canDrivers,
      threshold: canThreshold,
      driven: 'dominant bit',
      levelsPerBit: 1,
      slowestEdge: slowestCanEdge,
    },
  ],
]);

/** A driver may take this share of the shortest level for its transition, at most (TIA-485-A). */
const slowestShare = 0.3;

/** The fast driver of a published example of tap lengths (SN65HVD3x data sheet). */
const fastestEdge = seconds(25e-9);

/** What a driver's 10 to 90 % transition may be where the catalogue states none. @param levelTime of the shortest level */
export function edgesFor(
  { slowestEdge }: Signalling,
  levelTime: Seconds,
): { readonly fast: Seconds; readonly slow: Seconds } {
  const most = slowestShare * levelTime;
  return { fast: seconds(Math.min(fastestEdge, most)), slow: seconds(Math.min(slowestEdge, most)) };
}
