/**
 * Direct voltages of a powered bus: idle, with every driver off, and driven by one.
 *
 * Every level is plus minus minus as the device at the landing sees it, so that a crossed landing sees the opposite of
 * what its neighbours do. A level moves one way with each value of the circuit, so that it is least and most at
 * corners; those that can matter are all solved.
 */
import { isUnknown, type Known, type Range } from '../known.js';
import type { Landing, LandingIndex } from '../network.js';
import { formatOhms, type Ohms, type Volts, volts } from '../quantity.js';
import { type BiasCorner, type BusCircuit, type Corner, nominalCorner } from './circuit.js';
import { biasTolerance, lowered, raised, supplyTolerance, terminatorTolerance } from './tolerance.js';
import { driverTestLoad, leastDrive } from './transceiver.js';

const strong: BiasCorner = { resistance: lowered(1, biasTolerance), supply: raised(1, supplyTolerance) };
const weak: BiasCorner = { resistance: raised(1, biasTolerance), supply: lowered(1, supplyTolerance) };
const attenuating = { terminator: lowered(1, terminatorTolerance), load: 1 } as const;
const light = { terminator: raised(1, terminatorTolerance), load: 0 } as const;

/**
 * Bias that pulls one way only is least where it is weak and heavily loaded. Which way the cable's resistance works
 * depends on the landing: it holds the level up near the bias and lowers it far off.
 */
const oneWayCorners: readonly Corner[] = (['low', 'high'] as const).flatMap((run) => [
  { run, ...attenuating, straight: weak, crossed: weak, rail: 'joined' as const },
  { run, ...light, straight: strong, crossed: strong, rail: 'joined' as const },
]);

/** Where bias pulls both ways, the loads may work either way too. */
const bothWaysCorners: readonly Corner[] = (['low', 'high'] as const).flatMap((run) =>
  [attenuating, light].flatMap((loads) => [
    { run, ...loads, straight: weak, crossed: strong, rail: 'joined' as const },
    { run, ...loads, straight: strong, crossed: weak, rail: 'joined' as const },
  ]),
);

const noLevel: Range<Volts> = { nominal: volts(0), low: volts(0), high: volts(0) };

/** The level at every landing with all drivers off: 0 where nothing biases. */
export function idleLevels(circuit: BusCircuit): Known<Range<Volts>>[] {
  const { landings } = circuit.bus;
  if (!landings.some(({ index }) => circuit.isBiased(index))) return landings.map(() => noLevel);
  const levels = solved(circuit, (corner) =>
    circuit.pair.differences(circuit.values(corner), circuit.biasCurrents(corner)),
  );
  return landings.map(({ index }) => (circuit.isBiased(index) ? seenAt(circuit, index, levels) : noLevel));
}

/**
 * The level at every landing while the driver at `driver` holds 1.5 V across its own terminals against the bias, as a
 * driver that just meets TIA-485-A does into 54 ohm or more. The sign is that of the driven bit: positive everywhere
 * unless a landing is crossed. Landings that no cable joins to the driver get 0.
 */
export function drivenLevels(circuit: BusCircuit, driver: LandingIndex): Known<Range<Volts>>[] {
  const nothing = circuit.bus.landings.map(() => 0);
  // A crossed driver puts its plus on the minus wire.
  const sign = circuit.bus.landings[driver]!.crossed === undefined ? 1 : -1;
  const injected = { plus: nothing.with(driver, 1), minus: nothing.with(driver, -1) };
  const levels = solved(circuit, (corner) => {
    const values = circuit.values(corner);
    const idle = circuit.pair.differences(values, circuit.biasCurrents(corner));
    const response = circuit.pair.differences(values, injected);
    // Driven to minus 1.5 V, the sense that the bias works against, and told as a positive level.
    const current = response[driver] === 0 ? 0 : (-sign * leastDrive - idle[driver]!) / response[driver]!;
    return idle.map((voltage, landing) => 0 - (voltage + current * response[landing]!));
  });
  return circuit.bus.landings.map(({ index }) =>
    circuit.joined(driver, index) ? seenAt(circuit, index, levels) : noLevel,
  );
}

/**
 * {@link drivenLevels} of the head of a bus; unknown where there is none, and where it works into less than the load for
 * which TIA-485-A tells what a driver gives. `loads` is what a driver works into at each landing.
 */
export function levelsOfHead(
  circuit: BusCircuit,
  head: Landing | undefined,
  loads: readonly Known<Range<Ohms>>[],
): Known<Range<Volts>>[] {
  const { landings } = circuit.bus;
  const load = head && loads[head.index];
  if (!load) return landings.map(() => ({ unknown: 'which device is the head' }));
  if (isUnknown(load)) return landings.map(() => load);
  if (driverTestLoad <= load.nominal) return drivenLevels(circuit, head.index);
  const text = `what ${head.name} drives into ${formatOhms(load.nominal)}; TIA-485-A tells it for 54 ohm and more`;
  return landings.map(() => ({ unknown: text }));
}

/** Levels at the nominal corner first, then at every corner that can be least or most. */
function solved(circuit: BusCircuit, levelsAt: (corner: Corner) => number[]): number[][] {
  return [nominalCorner, ...(circuit.crossedBias ? bothWaysCorners : oneWayCorners)].map(levelsAt);
}

/** The level that the device at a landing sees. */
function seenAt(circuit: BusCircuit, landing: LandingIndex, levels: readonly number[][]): Known<Range<Volts>> {
  const missing = circuit.missing(landing);
  if (missing !== undefined) return { unknown: missing };
  const sign = circuit.bus.landings[landing]!.crossed === undefined ? 1 : -1;
  const nominal = sign * levels[0]![landing]!;
  let low = nominal;
  let high = nominal;
  for (const corner of levels) {
    const level = sign * corner[landing]!;
    low = Math.min(low, level);
    high = Math.max(high, level);
  }
  return { nominal: volts(nominal), low: volts(low), high: volts(high) };
}
