/** Token timing of BACnet MS/TP, by the parameters of ASHRAE 135 clause 9 as open implementations reproduce them. */
import { type BitsPerSecond, type Seconds, seconds } from '../quantity.js';

/** 8 data bits, no parity, one stop bit. */
const characterBits = 10;
/** A token: two of preamble, type, destination, source, two of length, checksum. */
const tokenBytes = 8;
/** Tturnaround: bit times to wait before driving the line. */
const turnaroundBits = 40;

/** From one master to the next: turnaround and the token's frame. */
export const tokenHop = (rate: BitsPerSecond): Seconds => seconds((tokenBytes * characterBits + turnaroundBits) / rate);

/** The token once around so many masters that have nothing to send. */
export const tokenCycle = (rate: BitsPerSecond, masters: number): Seconds => seconds(masters * tokenHop(rate));
