/** What TIA-485-A asks of drivers and receivers, as quoted in makers' application reports (SLLA628, SLLS849E). */
import { type Ohms, ohms, type Volts, volts } from '../quantity.js';

/** The load for which the driver's output is specified: two terminators of 120 ohm with 32 unit loads. */
export const driverTestLoad: Ohms = ohms(54);

/** The least that a driver gives into its test load. */
export const leastDrive: Volts = volts(1.5);

/** A receiver reads a level beyond this, of either sign, for certain; nearer to zero it may read anything. */
export const receiverThreshold: Volts = volts(0.2);
