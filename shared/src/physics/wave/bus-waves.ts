/** What every landing of a bus receives while one of them drives, at one choice of all uncertain values. */
import type { Signal } from './bits.js';
import type { WaveBus, WaveCorner } from './bus-circuit.js';
import { CircuitSolver } from './circuit-solver.js';
import type { DriverModel, Signalling } from './drive.js';
import type { Sampled } from './resample.js';
import { drivenBy, edgePerSigma, type StepResponse, stepResponse } from './step-response.js';

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
  const held = stepResponse(circuit, { conductance, sigma }, bus.elimination);
  const ownSign = bus.signs[bus.driver]!;
  const upright = bus.signs.map((sign) => sign === ownSign);
  if (driven === 'both bits') {
    const solver = new CircuitSolver(drivenBy(circuit, 0, conductance), bus.elimination);
    const offsets = solver.direct(bus.biasCurrents(corner));
    const signals = Array.from(bus.nodes, (node) => {
      const rise = scaled(held, node, 2 * driver.open);
      return { lower: ownSign * (offsets[node] ?? 0) - rise.end / 2, rise, fall: rise };
    });
    return { signals, upright, settled: held.settled, edge: held.sigma * edgePerSigma };
  }
  // The driver lets go: as if its current were taken back by an equal one into the pair without it (compensation).
  const current = driver.open * (1 - held.ends[0]!) * conductance;
  const released = stepResponse(circuit, { conductance: 0, sigma }, bus.elimination);
  const signals = Array.from(bus.nodes, (node) => ({
    lower: 0,
    rise: scaled(held, node, driver.open),
    fall: scaled(released, node, current),
  }));
  const slower = Math.max(held.sigma, released.sigma);
  return { signals, upright, settled: held.settled && released.settled, edge: slower * edgePerSigma };
}

/** The response of a node in volts; nothing at all where no cable leads from the driver. */
function scaled({ start, spacing, rows, ends }: StepResponse, node: number, scale: number): Sampled {
  if (node === -1) return { start, spacing, row: new Float64Array(0), end: 0 };
  const row = rows[node]!;
  const scaledRow = new Float64Array(row.length);
  for (let point = 0; point < row.length; point++) scaledRow[point] = row[point]! * scale;
  return { start, spacing, row: scaledRow, end: ends[node]! * scale };
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
  const circuit = drivenBy(bus.circuitAt(corner), 0, 1 / driver.output);
  const solver = new CircuitSolver(circuit, bus.elimination);
  const drive = driver.open / driver.output;
  const driverAlone = solver.direct(new Float64Array(circuit.nodeCount).fill(drive, 0, 1));
  if (driven === 'dominant bit') {
    return Array.from(bus.nodes, (node) => ({ lower: 0, upper: driverAlone[node] ?? 0 }));
  }
  const offsets = solver.direct(bus.biasCurrents(corner));
  const ownSign = bus.signs[bus.driver]!;
  return Array.from(bus.nodes, (node) => {
    const offset = ownSign * (offsets[node] ?? 0);
    const size = driverAlone[node] ?? 0;
    return { lower: offset - size, upper: offset + size };
  });
}
