/**
 * The response of every node of a circuit to a step of the driver: the one computation that all waveforms are made of.
 * The circuit is linear, so that any pattern of bits is a sum of shifted steps.
 *
 * **Method.** Lines, terminators and loads are exact at every complex frequency s (see circuit-solver.ts). The
 * response in time is the inverse Laplace transform along the line s = c + jw, by a fast Fourier transform: damping by
 * exp(-c t) fades what wraps around the window (D. J. Wilcox 1978; N. Nagaoka, A. Ametani 1988). Two things keep it
 * sharp. The settled value is taken out and put back in closed form, so that only what dies away is transformed. And
 * the driver's edge is the integral of a Gaussian, whose spectrum ends: beyond 6.6/sigma nothing is left to cut off, no
 * smoothing window is needed and nothing rings that does not ring on the bus. Of a Gaussian edge 10 to 90 % take
 * 2.563 sigma.
 *
 * **Validity.** One mode, the difference of the wires: no common mode, no coupling to the shield or to other pairs.
 * The wires' own skin effect is exact; that neighbouring wires crowd each other's current (proximity) is left out, as
 * are losses in the insulation: both damp a little more at high frequencies than is computed, so that ringing is
 * overstated, never understated. At low rates a cable's impedance is far from what its maker prints (a pair of 24 AWG
 * and 120 ohm has 550 - j540 ohm at 1 kHz); that is part of the exact two-port and nothing needs to be said about it.
 */
import { CircuitSolver, eliminationFor } from './circuit-solver.js';
import type { Elimination } from './elimination.js';
import { fourierTransform } from './fft.js';
import { delayPerMetre, noMedium, type WaveCircuit } from './wave-circuit.js';

/** Points of the answer for each sigma of the edge. */
const pointsPerSigma = 1 / 0.275;
/** Frequencies beyond this many per sigma carry less than 4e-10 of the edge. */
const lastFrequency = 6.6;
/** The edge is centred this many sigma after the transform's origin, where less than 1e-9 of it is cut off. */
const edgeCentre = 6;
/** exp(-7) is what wraps around: 1e-3 of what has not died away in a window. */
const damping = 7;
const leastPoints = 256;
/** The most points of a response, and the most numbers of a spectrum: bounds for time and memory. */
export const mostPoints = 65_536;
const mostNumbers = 6e6;
/** By how much the edge is slowed down at most to see a circuit come to rest within the points there are. */
const mostSlowdown = 1024;
/** A response has settled when it stays this near to its end, as a share of the largest end or of the driver's swing. */
const settledShare = 5e-5;
/** Points past which nothing moves by more than this share are left out. */
const stillShare = 1e-5;

/** 10 to 90 % of a Gaussian edge, in sigma. */
export const edgePerSigma = 2.5631031310892;

export interface StepResponse {
  /** Time of the first point after the middle of the driver's edge; negative. */
  readonly start: number;
  /** Seconds between points. */
  readonly spacing: number;
  /** Per node, volts for one unit of drive. */
  readonly rows: readonly Float64Array[];
  /** Where each node ends. */
  readonly ends: Float64Array;
  /** Whether every node has come to rest by the last point. */
  readonly settled: boolean;
  /** Of the edge that was computed: slower than the driver's where its own would take too many points. */
  readonly sigma: number;
}

export interface Drive {
  /** Where it drives; 0 when left out. */
  readonly node?: number;
  /** Siemens of the driver's output across its node; 0 for a current source. Unit of drive: 1 V behind it, or 1 A. */
  readonly conductance: number;
  /** Of the Gaussian edge, in seconds; above 0. */
  readonly sigma: number;
}

export function stepResponse(
  circuit: WaveCircuit,
  { conductance, sigma: wanted, node = 0 }: Drive,
  elimination = eliminationFor(circuit, node),
): StepResponse {
  const transform = new StepTransform(drivenBy(circuit, node, conductance), elimination, conductance || 1);
  const { points: first, slowdown, settles } = chosenWindow(circuit, transform, wanted);
  const sigma = wanted * slowdown;
  let points = first;
  let computed = transform.response(sigma, points);
  // The last points of a window are the least sure ones.
  const sure = () => points - (points >> 4);
  const isResting = () => lastMoving(computed.rows, computed.ends, settledShare) < sure() - 1;
  // A slow edge may have passed over what rings on after this one.
  while (settles && !isResting() && 2 * points <= mostPointsOf(circuit)) {
    points *= 2;
    computed = transform.response(sigma, points);
  }
  const settled = settles && isResting();
  const count = Math.min(sure(), Math.max(4, lastMoving(computed.rows, computed.ends, stillShare) + 2));
  return {
    start: -edgeCentre * sigma,
    spacing: sigma / pointsPerSigma,
    rows: computed.rows.map((row) => row.subarray(0, count)),
    ends: computed.ends,
    settled,
    sigma,
  };
}

/** A circuit with a driver's output across a node. */
export function drivenBy(circuit: WaveCircuit, node: number, conductance: number): WaveCircuit {
  const conductances = circuit.conductances.slice();
  conductances[node]! += conductance;
  return { ...circuit, conductances };
}

interface Window {
  readonly points: number;
  /** By what the edge is slowed down so that the points last until the circuit has come to rest. */
  readonly slowdown: number;
  readonly settles: boolean;
}

/**
 * How many points see the circuit come to rest: windows of twice the length each are tried with an edge so slow that
 * each costs little.
 */
function chosenWindow(circuit: WaveCircuit, transform: StepTransform, sigma: number): Window {
  const budget = mostPointsOf(circuit);
  let delay = 0;
  for (const { length, medium } of circuit.lines) {
    if (medium !== noMedium) delay += length * delayPerMetre(circuit.media[medium]!);
  }
  const wanted = (2 * edgeCentre * sigma + 2 * delay) * (pointsPerSigma / sigma);
  let points = leastPoints;
  while (points < wanted && points < budget * mostSlowdown) points *= 2;
  for (; points <= budget * mostSlowdown; points *= 2) {
    const { rows, ends } = transform.response((sigma * points) / leastPoints, leastPoints);
    if (lastMoving(rows, ends, settledShare) < (leastPoints * 13) / 16) {
      const kept = Math.min(points, budget);
      return { points: kept, slowdown: points / kept, settles: true };
    }
  }
  return { points: budget, slowdown: 1, settles: false };
}

/** The last point at which any row is farther from its end than a share of the largest one; -1 for none. */
function lastMoving(rows: readonly Float64Array[], ends: Float64Array, share: number): number {
  let largest = 0;
  let peak = 0;
  for (let node = 0; node < rows.length; node++) {
    const row = rows[node]!;
    largest = Math.max(largest, Math.abs(ends[node]!));
    for (let point = 0; point < row.length; point++) peak = Math.max(peak, Math.abs(row[point]!));
  }
  largest = Math.max(largest, peak * 0.1);
  let last = -1;
  for (let node = 0; node < rows.length; node++) {
    const row = rows[node]!;
    const end = ends[node]!;
    let point = row.length - 1;
    while (last < point && Math.abs(row[point]! - end) <= share * largest) point--;
    last = Math.max(last, point);
  }
  return last;
}

function mostPointsOf({ nodeCount }: WaveCircuit): number {
  const affordable = 2 ** Math.floor(Math.log2(mostNumbers / nodeCount));
  return Math.max(leastPoints, Math.min(mostPoints, affordable));
}

class StepTransform {
  private readonly solver: CircuitSolver;
  private readonly ends: Float64Array;

  /** `gain` is the current that one unit of drive puts into the driver's node. */
  constructor(
    private readonly circuit: WaveCircuit,
    elimination: Elimination,
    private readonly gain: number,
  ) {
    this.solver = new CircuitSolver(circuit, elimination);
    this.solver.solve(0, 0);
    const { rowOf } = this.solver.elimination;
    this.ends = Float64Array.from(
      { length: circuit.nodeCount },
      (_, node) => this.solver.voltsRe[rowOf[node]!]! * gain,
    );
  }

  /** Rows of `points` points, a power of two, for an edge of a sigma. */
  response(sigma: number, points: number): { readonly rows: Float64Array[]; readonly ends: Float64Array } {
    const { solver, ends, circuit, gain } = this;
    const { rowOf, size } = solver.elimination;
    const { voltsRe, voltsIm } = solver;
    const spacing = sigma / pointsPerSigma;
    const duration = points * spacing;
    const shift = damping / duration;
    const turn = (2 * Math.PI) / duration;
    const count = Math.min(points / 2, Math.floor(lastFrequency / (sigma * turn)) + 1);
    // Two real signals by each transform: positive frequencies are A + jB, negative ones conj(A) + j conj(B).
    const signals = Array.from({ length: size + (size & 1) }, () => new Float64Array(points));
    const rowEnds = new Float64Array(size);
    for (let node = 0; node < circuit.nodeCount; node++) rowEnds[rowOf[node]!] = ends[node]!;
    for (let frequency = 0; frequency < count; frequency++) {
      const omega = frequency * turn;
      solver.solve(shift, omega);
      // The edge: exp(s² sigma² / 2 - s centre) / s.
      const size2 = Math.exp(((shift * shift - omega * omega) * sigma * sigma) / 2 - shift * edgeCentre * sigma);
      const angle = shift * omega * sigma * sigma - omega * edgeCentre * sigma;
      const scale = size2 / (shift * shift + omega * omega) / duration / (frequency === 0 ? 2 : 1);
      const edgeRe = (Math.cos(angle) * shift + Math.sin(angle) * omega) * scale;
      const edgeIm = (Math.sin(angle) * shift - Math.cos(angle) * omega) * scale;
      const mirrored = (points - frequency) & (points - 1);
      for (let row = 0; row < size; row += 2) {
        const re = voltsRe[row]! * gain - rowEnds[row]!;
        const im = voltsIm[row]! * gain;
        const leftRe = re * edgeRe - im * edgeIm;
        const leftIm = re * edgeIm + im * edgeRe;
        let rightRe = 0;
        let rightIm = 0;
        if (row + 1 < size) {
          const otherRe = voltsRe[row + 1]! * gain - rowEnds[row + 1]!;
          const otherIm = voltsIm[row + 1]! * gain;
          rightRe = otherRe * edgeRe - otherIm * edgeIm;
          rightIm = otherRe * edgeIm + otherIm * edgeRe;
        }
        const left = signals[row]!;
        const right = signals[row + 1]!;
        left[frequency]! += leftRe - rightIm;
        right[frequency]! += leftIm + rightRe;
        left[mirrored]! += leftRe + rightIm;
        right[mirrored]! += rightRe - leftIm;
      }
    }
    const transform = fourierTransform(points);
    for (let row = 0; row < size; row += 2) transform.inverse(signals[row]!, signals[row + 1]!);
    restoreEnds(signals.slice(0, size), rowEnds, points);
    return { rows: Array.from(rowOf, (row) => signals[row]!), ends };
  }
}

/** Undoes the damping and adds each row's end times the driver's own edge. */
function restoreEnds(rows: readonly Float64Array[], ends: Float64Array, points: number): void {
  const growth = growthOver(points);
  for (let index = 0; index < rows.length; index++) {
    const row = rows[index]!;
    const end = ends[index]!;
    const rising = Math.min(points, edgeShares.length);
    for (let point = 0; point < rising; point++) row[point] = row[point]! * growth[point]! + end * edgeShares[point]!;
    for (let point = rising; point < points; point++) row[point] = row[point]! * growth[point]! + end;
  }
}

/** By what the damping of a window has to be undone at each of its points; by their number, a power of two. */
const growths = new Map<number, Float64Array>();

function growthOver(points: number): Float64Array {
  let growth = growths.get(points);
  if (!growth) {
    growth = Float64Array.from({ length: points }, (_, point) => Math.exp((damping * point) / points));
    growths.set(points, growth);
  }
  return growth;
}

/** The share of a Gaussian below so many sigma, to 1.2e-7: erfc by W. J. Cody's way of a Chebyshev fit (Numerical Recipes, erfcc). */
export function gaussianIntegral(sigmas: number): number {
  const z = Math.abs(sigmas) * Math.SQRT1_2;
  const t = 1 / (1 + z / 2);
  let polynomial = 0;
  for (const coefficient of erfcCoefficients) polynomial = polynomial * t + coefficient;
  const tail = (t * Math.exp(-z * z + polynomial)) / 2;
  return sigmas < 0 ? tail : 1 - tail;
}

/** Highest power first. */
const erfcCoefficients = [
  0.17087277, -0.82215223, 1.48851587, -1.13520398, 0.27886807, -0.18628806, 0.09678418, 0.37409196, 1.00002368,
  -1.26551223,
];

/** The driver's edge at the first points; past these it is over. */
const edgeShares = Float64Array.from({ length: 64 }, (_, point) =>
  gaussianIntegral(point / pointsPerSigma - edgeCentre),
);
