/** Cables as waves see them. */
import { isUnknown, type Known, type Range } from '../../known.js';
import type { Cable } from '../../network.js';
import type { Celsius } from '../../quantity.js';
import { cableResistance } from '../conductor.js';
import { cableVelocity, speedOfLight } from '../delay.js';
import type { Medium } from './wave-circuit.js';

/**
 * How far a cable's impedance may be from what its maker states: 10 % either way, what ISO 11898-2 (1993) allows
 * around 120 ohm (108 to 132 ohm).
 */
export const impedanceTolerance = 0.1;

/** No conductor resists less: so that a cable that claims none is still a cable. 1 uohm/m is a bar of 17,000 mm2. */
const leastResistance = 1e-6;

/**
 * A cable's inductance and capacitance follow from impedance and velocity, L = Z0 / v and C = 1 / (Z0 v); where no
 * impedance is stated, it follows from capacitance and velocity.
 */
export function mediumOf(cable: Cable, temperature: Celsius): Known<(wires: keyof Range<number>) => Medium> {
  const velocity = cableVelocity(cable);
  if (isUnknown(velocity)) return velocity;
  const resistance = cableResistance(cable, temperature);
  if (isUnknown(resistance)) return resistance;
  const speed = velocity * speedOfLight;
  const impedance = cable.impedance ?? (cable.capacitance === undefined ? undefined : 1 / (cable.capacitance * speed));
  if (impedance === undefined || !(0 < impedance && impedance < Number.POSITIVE_INFINITY)) {
    return { unknown: `the impedance of cable ${cable.name}` };
  }
  return (wires) => ({
    resistance: Math.max(leastResistance, resistance[wires]),
    inductance: impedance / speed,
    capacitance: 1 / (impedance * speed),
    skin: true,
  });
}
