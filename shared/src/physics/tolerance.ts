/**
 * Every tolerance that a figure's low and high are computed over, in one place. Published ones name their document;
 * the others are common practice without a published source and are said to be.
 */
import { celsius, type Ohms, ohms, ratio } from '../quantity.js';

/**
 * A terminator's resistance: 5 % up or down. From memory of ASHRAE 135 clause 9 (120 ohm, 5 %); also the grade of
 * carbon film resistors, the widest that is usual in loose terminators. A reading outside it is a fault, not a spread.
 */
export const terminatorTolerance = ratio(0.05);

/** A bias resistor: 5 %, the grade of carbon film resistors of the E24 series. Common practice, no published source. */
export const biasTolerance = ratio(0.05);

/**
 * The supply of a bias network, and any other whose tolerance is not stated: 5 %, so that 5 V may be 4.75 V, the value
 * that published bias examples start from.
 */
export const supplyTolerance = ratio(0.05);

/**
 * Resistance of a cable of known conductor: 5 %, the agreement that is asked for between a loop's planned and
 * measured resistance. It covers what makers' tables differ by (0.7 %), the lay of the pair (about 2 %) and the wire.
 * Common practice, no published source.
 */
export const cableTolerance = ratio(0.05);

/** An everyday ohmmeter: 0.5 % of the reading and 0.2 ohm for its leads. Common practice, no published source. */
export const meterTolerance: { readonly share: number; readonly leads: Ohms } = { share: 0.005, leads: ohms(0.2) };

/**
 * The temperature that a cable may have where the text gives none, for the least voltage of a supply: a ceiling void or
 * a plant room in summer, warmed by its neighbours. Common practice, no published source.
 */
export const warmCable = celsius(50);

/** `value` raised or lowered by a share of itself. */
export const raised = (value: number, tolerance: number): number => value * (1 + tolerance);
export const lowered = (value: number, tolerance: number): number => value * (1 - tolerance);
