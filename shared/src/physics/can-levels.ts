/** The dominant level of CAN: what a landing sees while the weakest driver that it must hear holds the bus. */
import { isUnknown, type Known, type Range } from '../known.js';
import { leastCanLoad } from '../limits/can.js';
import type { LandingIndex } from '../network.js';
import { formatOhms, type Ohms, type Volts } from '../quantity.js';
import type { BusCircuit } from './circuit.js';
import { drivenLevels } from './levels.js';

/**
 * The level at every landing while one of `drivers` gives the least that a CAN driver must (1.5 V, as on RS-485), from
 * whichever of them it is lower. On a chain the two ends are enough: from any other landing the level is higher.
 */
export function dominantLevels(
  circuit: BusCircuit,
  drivers: readonly LandingIndex[],
  loads: readonly Known<Range<Ohms>>[],
): Known<Range<Volts>>[] {
  let weakest: Known<Range<Volts>>[] | undefined;
  for (const driver of drivers) {
    const load = loads[driver]!;
    if (isUnknown(load)) return circuit.bus.landings.map(() => load);
    if (load.nominal < leastCanLoad.value) {
      const text = `what ${circuit.bus.landings[driver]!.name} drives into ${formatOhms(load.nominal)}; a CAN driver stands ${leastCanLoad.value} ohm and more`;
      return circuit.bus.landings.map(() => ({ unknown: text }));
    }
    const levels = drivenLevels(circuit, driver);
    weakest = weakest ? weakest.map((level, landing) => lower(level, levels[landing]!)) : levels;
  }
  return weakest ?? [];
}

const lower = (one: Known<Range<Volts>>, other: Known<Range<Volts>>): Known<Range<Volts>> =>
  isUnknown(one) || (!isUnknown(other) && one.nominal <= other.nominal) ? one : other;
