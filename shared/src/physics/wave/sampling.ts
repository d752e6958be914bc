/** When a receiver looks at a bit. */
import type { Range } from '../../known.js';
import type { Bus } from '../../network.js';
import { type Ratio, ratio } from '../../quantity.js';
import { samplePointOf } from '../can.js';

/** A usual serial receiver looks 16 times in a bit, so that it finds the start bit's edge up to 1/16 late. Common practice. */
const oversampling = 16;

/** What the clocks of both sides may differ by: a receiver must stand 2 % (MODBUS over Serial Line V1.02, 3.2). */
const clockDifference = 0.02;

/** CAN resynchronises by whole time quanta, of which a bit usually has 16. Common practice. */
const quantum = 1 / 16;

/**
 * A differential Manchester receiver takes its time anew from the change of level at the start of every bit, and the
 * second half ends one bit later. How its clock is cut is not published; a bit as finely as a serial receiver's is taken.
 */
const manchesterEarly = 2 / oversampling + 2 * clockDifference;

/**
 * As a share of the level, which is a bit or half of it, after its edge has arrived. An asynchronous receiver takes its time from the start bit
 * and looks at the middle of each bit; by the first stop bit, the last one it looks at, the clocks have drifted most.
 * A character has 11 bits unless the format says otherwise. CAN looks once, at its sample point.
 */
export function samplingOf(bus: Bus): Range<Ratio> {
  const { kind, format } = bus;
  if (kind === 'can') {
    const point = samplePointOf(bus);
    return { nominal: point, low: ratio(Math.max(0, point - quantum)), high: ratio(Math.min(1, point + quantum)) };
  }
  if (kind === 'peer-485') {
    return { nominal: ratio(0.5), low: ratio(0.5 - manchesterEarly), high: ratio(0.5 + manchesterEarly) };
  }
  const beforeStop = format ? 1 + format.value.dataBits + (format.value.parity === 'N' ? 0 : 1) : 10;
  const early = (beforeStop + 0.5) * clockDifference + 1 / oversampling;
  return { nominal: ratio(0.5), low: ratio(0.5 - early), high: ratio(0.5 + early) };
}
