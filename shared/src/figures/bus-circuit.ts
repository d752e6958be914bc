/** A bus as the circuit that a meter and a slow driver meet. */
import type { Known, Range, Unknown } from '../known.js';
import { type Bus, type Run, rs485Kinds } from '../network.js';
import { dominantLevels } from '../physics/can-levels.js';
import { BusCircuit, mostLoops } from '../physics/circuit.js';
import { levelsOfHead } from '../physics/levels.js';
import type { Volts } from '../quantity.js';
import type { BusStudy } from './study.js';

/** The circuit, or why the bus has none that can be solved. */
export function busCircuit(study: BusStudy): BusCircuit | Unknown {
  const { kind } = study.bus;
  if (kind === undefined) return { unknown: 'the kind of the bus' };
  if (kind === 'ethernet') return { unknown: 'what the transformers in Ethernet ports show a meter' };
  if (!rs485Kinds.has(kind) && kind !== 'can' && kind !== 'free-topology')
    return { unknown: `the circuit of a ${kind} bus` };
  if (mostLoops < study.shape.closing.length) {
    return { unknown: `the levels of a bus with ${study.shape.closing.length} loops, more than ${mostLoops}` };
  }
  return new BusCircuit(study.bus, study.shape, (run) => study.runResistance(run));
}

/** What each landing sees while the head drives; on CAN the dominant level of the end that reaches it more weakly. */
export function drivenLevels(
  { bus, shape, meter, head }: BusStudy,
  circuit: BusCircuit,
): readonly Known<Range<Volts>>[] {
  return bus.kind === 'can'
    ? dominantLevels(circuit, shape.ends ?? shape.walk.slice(0, 1), meter)
    : levelsOfHead(circuit, head, meter);
}

/** What is missing of a run whose cable is not known. */
export function missingCable({ landings }: Bus, { from, to }: Run): string {
  const there = to === undefined ? '' : ` to ${landings[to]!.name}`;
  return `the cable of the run from ${landings[from]!.name}${there}`;
}
