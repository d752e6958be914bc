/**
 * The electrical pair that a bus is: two wires of equal resistance run from landing to landing, and at each landing
 * conductances hang between the wires and from each of them to common, with currents driven into them.
 *
 * Two engines solve it: a bus without loops by two sweeps over its tree ({@link TreePair}), any other by nodal
 * analysis ({@link MeshPair}). They answer the same questions, and tests hold them to the same answers.
 */

/** How landings are joined. Runs are numbered by their position here. */
export interface PairTopology {
  readonly landingCount: number;
  readonly from: readonly number[];
  readonly to: readonly number[];
}

/** One choice of all values; per run or per landing. Conductances in siemens, currents in amperes. */
export interface PairValues {
  /** Ohms of each wire of a run: 0 for a joint, infinite for a gap. */
  readonly resistances: readonly number[];
  readonly across: readonly number[];
  readonly plusToCommon: readonly number[];
  readonly minusToCommon: readonly number[];
}

/** Currents driven from common into each wire at each landing. */
export interface PairCurrents {
  readonly plus: readonly number[];
  readonly minus: readonly number[];
}

export interface Pair {
  /** Resistance between the wires at every landing; infinite where no current can flow. */
  resistances(values: PairValues): number[];
  /** Voltage of plus against minus at every landing; 0 where nothing fixes it. */
  differences(values: PairValues, currents: PairCurrents): number[];
}
