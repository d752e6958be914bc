/** Which bias resistors hold the idle level and leave the drivers enough. */
import { lumpedLoad } from '../../figures/lumped-load.js';
import { type BusStudy, createStudy } from '../../figures/study.js';
import { isUnknown } from '../../known.js';
import { idleThreshold, leastDriverLoad } from '../../limits/level.js';
import { biasResistors } from '../../limits/load.js';
import type { Bus, BusBias, Store } from '../../network.js';
import { type Ohms, ohms, volts } from '../../quantity.js';

/** Keeps 200 mV on two terminators of 120 ohm with a full load, and is inside the 450 to 650 ohm of Modbus. */
const usualBias = 510;

/** One decade of the E24 series (IEC 60063), largest first. */
const series = [
  ...[9.1, 8.2, 7.5, 6.8, 6.2, 5.6, 5.1, 4.7, 4.3, 3.9, 3.6, 3.3],
  ...[3.0, 2.7, 2.4, 2.2, 2.0, 1.8, 1.6, 1.5, 1.3, 1.2, 1.1, 1.0],
];
/** Values that are in any box of resistors, 100 ohm to 2 kohm: the usual one, then the others from the largest down. */
const resistors = [
  usualBias,
  ...[1000, 100].flatMap((decade) => series.map((step) => Math.round(step * decade))).filter((value) => value <= 2000),
];

/** Solving a larger bus dozens of times would keep people waiting; such a bus has other worries. */
const mostLandings = 400;

/** What the head drives into, if it is less than a driver must drive; all resistors and loads of the bus together. */
export function overload(study: BusStudy): Ohms | undefined {
  const { head } = study;
  if (!head || leastDriverLoad.value <= lumpedLoad(study)) return undefined;
  const load = study.meter[head.index];
  return !load || isUnknown(load) || leastDriverLoad.value <= load.nominal ? undefined : load.nominal;
}

/** How well every landing idles at or above the threshold: over all tolerances, nominally alone, or not. */
export function idles({ bus, idle }: BusStudy): 'surely' | 'nominally' | 'weakly' {
  let [nominal, low] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const { index } of bus.landings) {
    const level = idle[index];
    if (!level || isUnknown(level)) continue;
    nominal = Math.min(nominal, level.nominal);
    low = Math.min(low, level.low);
  }
  if (nominal < idleThreshold.value) return 'weakly';
  return low < idleThreshold.value ? 'nominally' : 'surely';
}

/**
 * The standard resistor that serves best as both resistors of a bias: one that holds the idle level over all
 * tolerances if there is one, else nominally; undefined where none does without overloading the driver.
 */
export function servingBias(store: Store, bus: Bus, biasesWith: (resistor: Ohms) => readonly BusBias[]) {
  if (mostLandings < bus.landings.length) return undefined;
  const range = biasResistors(bus.kind) ?? { low: 0, high: Number.POSITIVE_INFINITY };
  let nominally: Ohms | undefined;
  for (const value of resistors) {
    if (value < range.low || range.high < value) continue;
    const resistor = ohms(value);
    const study = createStudy(store, { ...bus, biases: biasesWith(resistor) });
    if (overload(study) !== undefined) continue;
    const level = idles(study);
    if (level === 'surely') return resistor;
    if (level === 'nominally') nominally ??= resistor;
  }
  return nominally;
}

/** The resistor for a new bias at a landing, between the pair and the usual 5 V. */
export const newBias = (store: Store, bus: Bus, landing: number): Ohms | undefined =>
  servingBias(store, bus, (resistor) => [
    ...bus.biases,
    { landing, up: resistor, down: resistor, supply: volts(5), place: bus.place, builtIn: false },
  ]);

/** The one bias whose resistors can be changed: it is written in the bus, and no other is. */
export function changeableBias({ biases }: Bus): number | undefined {
  const written = biases.flatMap(({ builtIn, landing }, index) => (builtIn || landing === undefined ? [] : [index]));
  return written.length === 1 ? written[0] : undefined;
}

/** The resistor that serves in place of those of a bias. */
export const changedBias = (store: Store, bus: Bus, index: number): Ohms | undefined =>
  servingBias(store, bus, (resistor) =>
    bus.biases.map((bias, at) => (at === index ? { ...bias, up: resistor, down: resistor } : bias)),
  );
