/**
 * Closed forms for fail-safe bias on a short bus: two resistors of RB from the pair to a supply Vs and to common,
 * terminators RT in parallel, n unit loads of 12 kohm from each line to common. Kirchhoff's law gives
 *
 *     Vs / V idle = 1 + RB (n / 12 kohm + 2 / RT)
 */
import { type Ohms, ohms, type Ratio, type Volts, volts } from '../quantity.js';
import { unitLoadResistance } from './loads.js';

export interface BiasedPair {
  readonly supply: Volts;
  /** All terminators in parallel; infinite for none. */
  readonly termination: Ohms;
  readonly unitLoads: Ratio;
}

const loadOf = ({ termination, unitLoads }: BiasedPair): number => unitLoads / unitLoadResistance + 2 / termination;

/** The idle level that a pair of bias resistors gives. */
export const idleOfBias = (pair: BiasedPair, resistor: Ohms): Volts =>
  volts(pair.supply / (1 + resistor * loadOf(pair)));

/** The largest pair of bias resistors that still gives an idle level; 0 when none can, infinite when any does. */
export function largestBias(pair: BiasedPair, idle: Volts): Ohms {
  const load = loadOf(pair);
  const excess = Math.max(0, pair.supply / idle - 1);
  return ohms(load === 0 ? Number.POSITIVE_INFINITY : excess / load);
}
