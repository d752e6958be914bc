/** What every landing of a bus receives while one of them drives, at one choice of all uncertain values. */
import type { LandingIndex } from '../../network.js';
import type { Signal } from './bits.js';
import type { BiasSource, WaveBus, WaveCorner } from './bus-circuit.js';
import { CircuitSolver } from './circuit-solver.js';
import type { DriverModel, Signalling } from './drive.js';
import type { Sampled } from './resample.js';
import { edgePerSigma, type StepResponse, stepResponse } from './step-response.js';
import { reachableFrom } from './wave-circuit.js';

export interface BusWaves {
  /** Per landing, as its device sees it with the bus the right way round: what a crossed one sees is the negative. */
  readonly signals: readonly Signal[];
  /** Per landing: false where the device sees the pair the other way round than the driver. */
  readonly upright: readonly boolean[];
  readonly settled: boolean;
  /** 10 to 90 % time of the edge that was computed. */
  readonly edge: number;
}

/** `edge` is the driver's 10 to 90 % time. */
export function busWaves(
  bus: WaveBus,
  corner: WaveCorner,
  driver: DriverModel,
  driven: Signalling['driven'],
  edge: number,
): BusWaves {
  const circuit = bus.circuitAt(corner);
  const sigma = edge / edgePerSigma;
  const conductance = 1 / driver.output;
  const held = stepResponse(circuit, { node: bus.driver, conductance, sigma });
  const ownSign = bus.signs[bus.driver]!;
  const upright = bus.signs.map((sign) => sign === ownSign);
  if (driven === 'both bits') {
    const offsets = biasLevels(bus, corner, conductance);
    const signals = bus.signs.map((_, landing) => {
      const rise = scaled(held, landing, 2 * driver.open);
      return { lower: ownSign * offsets[landing]! - rise.end / 2, rise, fall: rise };
    });
    return { signals, upright, settled: held.settled, edge: held.sigma * edgePerSigma };
  }
  // The driver lets go: as if its current were taken back by an equal one into the pair without it (compensation).
  const current = driver.open * (1 - held.ends[bus.driver]!) * conductance;
  const released = stepResponse(circuit, { node: bus.driver, conductance: 0, sigma });
  const signals = bus.signs.map((_, landing) => ({
    lower: 0,
    rise: scaled(held, landing, driver.open),
    fall: scaled(released, landing, current),
  }));
  const slower = Math.max(held.sigma, released.sigma);
  return { signals, upright, settled: held.settled && released.settled, edge: slower * edgePerSigma };
}

function scaled({ start, spacing, rows, ends }: StepResponse, landing: LandingIndex, scale: number): Sampled {
  return { start, spacing, row: rows[landing]!.map((value) => value * scale), end: ends[landing]! * scale };
}

/** What a landing has once all has come to rest; volts, with the bus the right way round. */
export interface SettledLevels {
  readonly lower: number;
  readonly upper: number;
}

/** The ends of {@link busWaves}' signals without their ways there: direct current alone. */
export function settledLevels(
  bus: WaveBus,
  corner: WaveCorner,
  driver: DriverModel,
  driven: Signalling['driven'],
): SettledLevels[] {
  const conductance = 1 / driver.output;
  const gains = directLevels(bus, corner, conductance, [{ landing: bus.driver, amperes: conductance }]);
  if (driven === 'dominant bit') return Array.from(gains, (gain) => ({ lower: 0, upper: driver.open * gain }));
  const offsets = biasLevels(bus, corner, conductance);
  const ownSign = bus.signs[bus.driver]!;
  return Array.from(gains, (gain, landing) => {
    const offset = ownSign * offsets[landing]!;
    return { lower: offset - driver.open * gain, upper: offset + driver.open * gain };
  });
}

/** Of the pair by the bias alone, with the driver's resistance across its landing. */
const biasLevels = (bus: WaveBus, corner: WaveCorner, conductance: number): Float64Array =>
  directLevels(bus, corner, conductance, bus.biasesAt(corner));

/** Direct voltage of the pair at each landing by currents at some. */
function directLevels(
  bus: WaveBus,
  corner: WaveCorner,
  conductance: number,
  sources: readonly BiasSource[],
): Float64Array {
  const levels = new Float64Array(bus.signs.length);
  if (sources.length === 0) return levels;
  const whole = bus.circuitAt(corner);
  whole.conductances[bus.driver]! += conductance;
  for (const { landing, amperes } of sources) {
    const { circuit, nodes } = reachableFrom(whole, landing);
    const solver = new CircuitSolver(circuit, 0);
    solver.solve(0, 0);
    for (let other = 0; other < levels.length; other++) {
      const node = nodes[other]!;
      if (node !== -1) levels[other]! += amperes * solver.voltsRe[solver.elimination.rowOf[node]!]!;
    }
  }
  return levels;
}
