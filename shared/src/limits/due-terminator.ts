/** Which terminator is due at a landing, and which other ones are accepted there. */
import type { Bus, Landing, Termination } from '../network.js';
import { type Ohms, ohms } from '../quantity.js';
import { canTerminators } from './can.js';
import { type SegmentForm, segmentTerminators, segmentTerminatorTolerance } from './free-topology.js';
import { modbusTerminator, terminatorShare, usualTerminator } from './terminator.js';

/** Impedance of the cable that arrives at a landing; undefined when there is none, or its maker does not say. */
export function impedanceAt(bus: Bus, landing: Landing): Ohms | undefined {
  const [run] = landing.runs;
  return (run === undefined ? bus.cable : bus.runs[run]?.cable)?.impedance;
}

/**
 * The terminator that is due at a landing: what its cable asks for, within what CAN accepts; on free topology the
 * resistor and capacitors of the segment's form.
 */
export function dueTermination(bus: Bus, landing: Landing, form: SegmentForm = 'bus'): Termination {
  if (bus.kind === 'free-topology') return segmentTerminators[form];
  const impedance = impedanceAt(bus, landing);
  if (bus.kind === 'can') {
    const { low, high, nominal } = canTerminators;
    const fits = impedance !== undefined && low <= impedance && impedance <= high;
    return { resistance: fits ? impedance : nominal };
  }
  return { resistance: impedance ?? usualTerminator };
}

/** The resistor of what is due. */
export const dueResistance = (bus: Bus, landing: Landing): Ohms => dueTermination(bus, landing).resistance;

/** The resistances that are workable at an end. */
export interface TerminatorBand {
  readonly low: Ohms;
  readonly high: Ohms;
}

/** @param length of the line: on long CAN lines larger ones are accepted */
export function terminatorBand(bus: Bus, landing: Landing, length: number): TerminatorBand {
  if (bus.kind !== 'can') return bandAround(dueResistance(bus, landing));
  const { low, high, highWhenLong, longBeyond } = canTerminators;
  return { low, high: longBeyond < length ? highWhenLong : high };
}

const bandAround = (due: Ohms): TerminatorBand => ({
  low: ohms(due * (1 - terminatorShare.value)),
  high: ohms(due * (1 + terminatorShare.value)),
});

/** Whether a resistor is workable: inside the band, or the one that the Modbus guide names. */
export const isWorkable = ({ kind }: Bus, resistance: Ohms, { low, high }: TerminatorBand): boolean =>
  (kind === 'modbus-rtu' && resistance === modbusTerminator) ||
  (low * (1 - Number.EPSILON) <= resistance && resistance <= high * (1 + Number.EPSILON));

/** Whether a resistor is workable on an RS-485 cable of an impedance. */
export const fitsImpedance = (bus: Bus, resistance: Ohms, impedance: Ohms): boolean =>
  isWorkable(bus, resistance, bandAround(impedance));

/**
 * Whether an end of RS-485 or CAN is terminated as it may be: by one workable resistor, without a capacitor in series on
 * CAN, where the terminators bring the pair back to its recessive level.
 */
export function isTerminatedWell(bus: Bus, landing: Landing, length: number): boolean {
  const [termination, another] = landing.terminations;
  if (!termination || another) return false;
  if (bus.kind === 'can' && termination.capacitance !== undefined) return false;
  return isWorkable(bus, termination.resistance, terminatorBand(bus, landing, length));
}

/** Whether a terminator is the one of a segment's form: its resistor, and capacitors that block direct current. */
export const isSegmentTerminator = (termination: Termination, due: Termination): boolean =>
  termination.capacitance !== undefined &&
  Math.abs(termination.resistance - due.resistance) <= segmentTerminatorTolerance * due.resistance;
