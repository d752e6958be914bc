/** How long the wave travels along a cable. */
import type { Known } from '../known.js';
import type { Cable } from '../network.js';
import { type Metres, type Ratio, ratio, type Seconds, seconds } from '../quantity.js';

/** Speed of light in vacuum in m/s, exact (SI, 1983). */
export const speedOfLight = 299_792_458;

/**
 * Velocity of a cable as a share of the speed of light: as stated, else from impedance and capacitance by
 * v = 1/(Z0 C'), which holds for every low-loss line.
 */
export function cableVelocity(cable: Cable): Known<Ratio> {
  if (cable.velocity !== undefined && 0 < cable.velocity) return cable.velocity;
  const { impedance, capacitance } = cable;
  if (impedance !== undefined && capacitance !== undefined && 0 < impedance && 0 < capacitance) {
    const velocity = 1 / (impedance * capacitance * speedOfLight);
    // Faster than light cannot be: then one of the two is wrong, and neither tells the velocity.
    if (velocity <= 1) return ratio(velocity);
  }
  return { unknown: `the velocity of cable ${cable.name}` };
}

/** Time for a length of cable at a velocity. */
export function travelTime(length: Metres, velocity: Ratio): Seconds {
  return seconds(length / (velocity * speedOfLight));
}
