/**
 * A circuit solved at complex frequencies: how many volts each node gets for one ampere that is driven into the
 * driver's node. Each line is its exact two-port,
 *
 *     y11 = Yc coth(gamma l),  y12 = -Yc csch(gamma l),  gamma = sqrt((R + sL) sC),  Yc = sC / gamma,
 *
 * and the nodes are eliminated in an order that was found once. Nothing is allocated per frequency.
 */
import { type Elimination, eliminationOf } from './elimination.js';
import { skinConstant, skinRatio } from './skin.js';
import { jointLength, type Line, noMedium, type WaveCircuit } from './wave-circuit.js';

/** Below this size of gamma l, squared, a series tells y11 and y12 to eleven digits, without cancellation. */
const shortSquared = 0.04;

const isJoint = ({ length, medium }: Line): boolean => medium === noMedium || length < jointLength;

/** The order in which a circuit is solved for currents into one node; circuits that differ in values alone share it. */
export function eliminationFor({ nodeCount, lines }: WaveCircuit, driver: number): Elimination {
  return eliminationOf(
    nodeCount,
    lines.map(({ from }) => from),
    lines.map(({ to }) => to),
    lines.map(isJoint),
    driver,
  );
}

export class CircuitSolver {
  /** Volts of each row for one ampere, after {@link solve}. */
  readonly voltsRe: Float64Array;
  readonly voltsIm: Float64Array;
  private readonly diagonalRe: Float64Array;
  private readonly diagonalIm: Float64Array;
  private readonly entryRe: Float64Array;
  private readonly entryIm: Float64Array;
  /** Per medium: gamma squared and its root, the series impedance, the characteristic admittance; all of a metre. */
  private readonly mediumAt: Float64Array;
  private readonly skin = new Float64Array(2);
  private readonly lineLength: Float64Array;
  private readonly lineMedium: Int32Array;
  private readonly fromRow: Int32Array;
  private readonly toRow: Int32Array;
  private readonly lineEntry: Int32Array;
  private readonly rowConductance: Float64Array;
  private readonly rowCapacitance: Float64Array;

  constructor(
    private readonly circuit: WaveCircuit,
    readonly elimination: Elimination,
  ) {
    const { nodeCount, lines, conductances, capacitances, media } = circuit;
    const { size, rowOf, entryOf, entryCount } = elimination;
    let wired = 0;
    for (const line of lines) if (!isJoint(line)) wired++;
    this.lineLength = new Float64Array(wired);
    this.lineMedium = new Int32Array(wired);
    this.fromRow = new Int32Array(wired);
    this.toRow = new Int32Array(wired);
    this.lineEntry = new Int32Array(wired);
    for (let index = 0, slot = 0; index < lines.length; index++) {
      const line = lines[index]!;
      if (isJoint(line)) continue;
      this.lineLength[slot] = line.length;
      this.lineMedium[slot] = line.medium;
      this.fromRow[slot] = rowOf[line.from]!;
      this.toRow[slot] = rowOf[line.to]!;
      this.lineEntry[slot++] = entryOf[index]!;
    }
    this.rowConductance = new Float64Array(size);
    this.rowCapacitance = new Float64Array(size);
    for (let node = 0; node < nodeCount; node++) {
      this.rowConductance[rowOf[node]!]! += conductances[node]!;
      this.rowCapacitance[rowOf[node]!]! += capacitances[node]!;
    }
    this.voltsRe = new Float64Array(size);
    this.voltsIm = new Float64Array(size);
    this.diagonalRe = new Float64Array(size);
    this.diagonalIm = new Float64Array(size);
    this.entryRe = new Float64Array(entryCount);
    this.entryIm = new Float64Array(entryCount);
    this.mediumAt = new Float64Array(8 * media.length);
  }

  /** Solves at s = re + j im, with re and im not negative; s = 0 is direct current. */
  solve(re: number, im: number): void {
    this.assembleShunts(re, im);
    this.assembleMedia(re, im);
    this.assembleLines();
    this.eliminate();
  }

  /** Direct voltages of all nodes for currents into each of them, in amperes. */
  direct(currents: Float64Array): Float64Array {
    this.solve(0, 0);
    const { diagonalRe, entryRe } = this;
    const { size, rowOf, starts, rows } = this.elimination;
    const values = new Float64Array(size);
    for (let node = 0; node < currents.length; node++) values[rowOf[node]!]! += currents[node]!;
    for (let column = 0; column < size; column++) {
      for (let entry = starts[column]!; entry < starts[column + 1]!; entry++) {
        values[rows[entry]!]! -= entryRe[entry]! * values[column]!;
      }
    }
    for (let column = size - 1; 0 <= column; column--) {
      values[column]! /= diagonalRe[column]!;
      for (let entry = starts[column]!; entry < starts[column + 1]!; entry++) {
        values[column]! -= entryRe[entry]! * values[rows[entry]!]!;
      }
    }
    const volts = new Float64Array(currents.length);
    for (let node = 0; node < volts.length; node++) volts[node] = values[rowOf[node]!]!;
    return volts;
  }

  private assembleShunts(re: number, im: number): void {
    const { diagonalRe, diagonalIm, rowConductance, rowCapacitance } = this;
    for (let row = 0; row < diagonalRe.length; row++) {
      diagonalRe[row] = rowConductance[row]! + re * rowCapacitance[row]!;
      diagonalIm[row] = im * rowCapacitance[row]!;
    }
    this.entryRe.fill(0);
    this.entryIm.fill(0);
    const { rowOf } = this.elimination;
    for (const { node, resistance, capacitance } of this.circuit.terminations) {
      // sC / (1 + s R C)
      const overRe = re * capacitance;
      const overIm = im * capacitance;
      const underRe = 1 + resistance * overRe;
      const underIm = resistance * overIm;
      const scale = 1 / (underRe * underRe + underIm * underIm);
      const row = rowOf[node]!;
      diagonalRe[row]! += (overRe * underRe + overIm * underIm) * scale;
      diagonalIm[row]! += (overIm * underRe - overRe * underIm) * scale;
    }
  }

  private assembleMedia(re: number, im: number): void {
    const { mediumAt, skin } = this;
    for (const [index, medium] of this.circuit.media.entries()) {
      const { resistance, inductance, capacitance } = medium;
      let seriesRe = 2 * resistance;
      let seriesIm = 0;
      if (medium.skin) {
        const share = skinConstant / resistance;
        skinRatio(re * share, im * share, skin);
        seriesRe *= skin[0]!;
        seriesIm = 2 * resistance * skin[1]!;
      }
      seriesRe += re * inductance;
      seriesIm += im * inductance;
      const acrossRe = re * capacitance;
      const acrossIm = im * capacitance;
      const squareRe = seriesRe * acrossRe - seriesIm * acrossIm;
      const squareIm = seriesRe * acrossIm + seriesIm * acrossRe;
      // The root in the right half plane; squareIm is not negative.
      const size = Math.hypot(squareRe, squareIm);
      const larger = Math.sqrt((size + Math.abs(squareRe)) / 2);
      const smaller = larger === 0 ? 0 : squareIm / (2 * larger);
      const gammaRe = 0 <= squareRe ? larger : smaller;
      const gammaIm = 0 <= squareRe ? smaller : larger;
      const scale = 1 / (size || 1);
      const slot = 8 * index;
      mediumAt[slot] = squareRe;
      mediumAt[slot + 1] = squareIm;
      mediumAt[slot + 2] = gammaRe;
      mediumAt[slot + 3] = gammaIm;
      mediumAt[slot + 4] = seriesRe;
      mediumAt[slot + 5] = seriesIm;
      mediumAt[slot + 6] = (acrossRe * gammaRe + acrossIm * gammaIm) * scale;
      mediumAt[slot + 7] = (acrossIm * gammaRe - acrossRe * gammaIm) * scale;
    }
  }

  private assembleLines(): void {
    const { mediumAt, lineLength, lineMedium, fromRow, toRow, lineEntry } = this;
    const { diagonalRe, diagonalIm, entryRe, entryIm } = this;
    for (let line = 0; line < lineLength.length; line++) {
      const slot = 8 * lineMedium[line]!;
      const length = lineLength[line]!;
      const squareRe = mediumAt[slot]! * length * length;
      const squareIm = mediumAt[slot + 1]! * length * length;
      let admittanceRe: number;
      let admittanceIm: number;
      let cothRe: number;
      let cothIm: number;
      let cschRe: number;
      let cschIm: number;
      if (squareRe * squareRe + squareIm * squareIm < shortSquared * shortSquared) {
        // x coth x and x csch x as series in x², times Yc / x = 1 / (Z l).
        const fourthRe = squareRe * squareRe - squareIm * squareIm;
        const fourthIm = 2 * squareRe * squareIm;
        const sixthRe = fourthRe * squareRe - fourthIm * squareIm;
        const sixthIm = fourthRe * squareIm + fourthIm * squareRe;
        cothRe = 1 + squareRe / 3 - fourthRe / 45 + (2 * sixthRe) / 945;
        cothIm = squareIm / 3 - fourthIm / 45 + (2 * sixthIm) / 945;
        cschRe = 1 - squareRe / 6 + (7 * fourthRe) / 360 - (31 * sixthRe) / 15120;
        cschIm = -squareIm / 6 + (7 * fourthIm) / 360 - (31 * sixthIm) / 15120;
        const seriesRe = mediumAt[slot + 4]! * length;
        const seriesIm = mediumAt[slot + 5]! * length;
        const scale = 1 / (seriesRe * seriesRe + seriesIm * seriesIm);
        admittanceRe = seriesRe * scale;
        admittanceIm = -seriesIm * scale;
      } else {
        const decay = Math.exp(-mediumAt[slot + 2]! * length);
        const angle = mediumAt[slot + 3]! * length;
        const onceRe = decay * Math.cos(angle);
        const onceIm = -decay * Math.sin(angle);
        const twiceRe = onceRe * onceRe - onceIm * onceIm;
        const twiceIm = 2 * onceRe * onceIm;
        const under = 1 - twiceRe;
        const scale = 1 / (under * under + twiceIm * twiceIm);
        cothRe = ((1 + twiceRe) * under - twiceIm * twiceIm) * scale;
        cothIm = (twiceIm * under + (1 + twiceRe) * twiceIm) * scale;
        cschRe = 2 * (onceRe * under - onceIm * twiceIm) * scale;
        cschIm = 2 * (onceIm * under + onceRe * twiceIm) * scale;
        admittanceRe = mediumAt[slot + 6]!;
        admittanceIm = mediumAt[slot + 7]!;
      }
      const ownRe = admittanceRe * cothRe - admittanceIm * cothIm;
      const ownIm = admittanceRe * cothIm + admittanceIm * cothRe;
      const mutualRe = admittanceRe * cschRe - admittanceIm * cschIm;
      const mutualIm = admittanceRe * cschIm + admittanceIm * cschRe;
      const from = fromRow[line]!;
      const to = toRow[line]!;
      diagonalRe[from]! += ownRe;
      diagonalIm[from]! += ownIm;
      diagonalRe[to]! += ownRe;
      diagonalIm[to]! += ownIm;
      const entry = lineEntry[line]!;
      if (entry === -1) {
        // A line back to where it starts: both its ends see one voltage.
        diagonalRe[from]! -= 2 * mutualRe;
        diagonalIm[from]! -= 2 * mutualIm;
      } else {
        entryRe[entry]! -= mutualRe;
        entryIm[entry]! -= mutualIm;
      }
    }
  }

  /** L D L' without pivoting: the circuit is passive, so that no pivot vanishes. Then the sweep back. */
  private eliminate(): void {
    const { diagonalRe, diagonalIm, entryRe, entryIm, voltsRe, voltsIm } = this;
    const { size, starts, rows, changes } = this.elimination;
    let change = 0;
    for (let column = 0; column < size - 1; column++) {
      const scale = 1 / (diagonalRe[column]! ** 2 + diagonalIm[column]! ** 2);
      const pivotRe = diagonalRe[column]! * scale;
      const pivotIm = -diagonalIm[column]! * scale;
      for (let first = starts[column]!; first < starts[column + 1]!; first++) {
        const valueRe = entryRe[first]!;
        const valueIm = entryIm[first]!;
        const shareRe = valueRe * pivotRe - valueIm * pivotIm;
        const shareIm = valueRe * pivotIm + valueIm * pivotRe;
        const row = rows[first]!;
        diagonalRe[row]! -= shareRe * valueRe - shareIm * valueIm;
        diagonalIm[row]! -= shareRe * valueIm + shareIm * valueRe;
        change++;
        for (let second = first + 1; second < starts[column + 1]!; second++) {
          const target = changes[change++]!;
          entryRe[target]! -= shareRe * entryRe[second]! - shareIm * entryIm[second]!;
          entryIm[target]! -= shareRe * entryIm[second]! + shareIm * entryRe[second]!;
        }
        entryRe[first] = shareRe;
        entryIm[first] = shareIm;
      }
    }
    const last = size - 1;
    const scale = 1 / (diagonalRe[last]! ** 2 + diagonalIm[last]! ** 2);
    voltsRe[last] = diagonalRe[last]! * scale;
    voltsIm[last] = -diagonalIm[last]! * scale;
    for (let column = last - 1; 0 <= column; column--) {
      let re = 0;
      let im = 0;
      for (let entry = starts[column]!; entry < starts[column + 1]!; entry++) {
        const row = rows[entry]!;
        re -= entryRe[entry]! * voltsRe[row]! - entryIm[entry]! * voltsIm[row]!;
        im -= entryRe[entry]! * voltsIm[row]! + entryIm[entry]! * voltsRe[row]!;
      }
      voltsRe[column] = re;
      voltsIm[column] = im;
    }
  }
}
