/**
 * Timing and frames of Modbus over serial line (MODBUS over Serial Line, Specification and Implementation Guide
 * V1.02, sections 2.5.1 and 6.2.2).
 */
import { type BitsPerSecond, type Seconds, seconds } from '../quantity.js';

/** An RTU character is always 11 bits: start, 8 data, parity or a second stop bit, stop. */
export const rtuCharacterBits = 11;

/** Above this rate the guide recommends fixed silences instead of ones that shrink with the character. */
export const fastestScaledRate = 19_200;
const fixedWithinFrame = seconds(750e-6);
const fixedBetweenFrames = seconds(1.75e-3);

/** Time of one RTU character. */
export const characterTime = (rate: BitsPerSecond): Seconds => seconds(rtuCharacterBits / rate);

/** t1.5: a longer gap inside a frame spoils it. */
export const gapWithinFrame = (rate: BitsPerSecond): Seconds =>
  rate <= fastestScaledRate ? seconds(1.5 * characterTime(rate)) : fixedWithinFrame;

/** t3.5: the least silence between frames. */
export const gapBetweenFrames = (rate: BitsPerSecond): Seconds =>
  rate <= fastestScaledRate ? seconds(3.5 * characterTime(rate)) : fixedBetweenFrames;

/** Time of a frame of so many bytes, without the silence around it. */
export const frameTime = (rate: BitsPerSecond, bytes: number): Seconds => seconds(bytes * characterTime(rate));

/** What a poll cycle is computed for; said wherever the result is shown. */
export interface PollAssumptions {
  /** Holding registers that each device is asked for, in one request. */
  readonly registers: number;
  /** Time that a device takes before it answers. The guide sets none; common practice, no published source. */
  readonly replyDelay: Seconds;
}
export const usualPoll: PollAssumptions = { registers: 10, replyDelay: seconds(0.01) };

/** Bytes of a request to read registers, address and checksum included, and of its answer. */
export const readRequestBytes = 8;
export const readAnswerBytes = (registers: number): number => 5 + 2 * registers;

/** One device polled: request, silence, its delay, answer, silence. */
export function pollTime(rate: BitsPerSecond, { registers, replyDelay }: PollAssumptions = usualPoll): Seconds {
  const frames = frameTime(rate, readRequestBytes) + frameTime(rate, readAnswerBytes(registers));
  return seconds(frames + replyDelay + 2 * gapBetweenFrames(rate));
}

/** Every device polled once, none of them silent. */
export const pollCycle = (rate: BitsPerSecond, devices: number, assumptions: PollAssumptions = usualPoll): Seconds =>
  seconds(devices * pollTime(rate, assumptions));

/** The checksum of a frame, as the two bytes that follow it: low byte first. */
export function checksum(bytes: readonly number[]): readonly [low: number, high: number] {
  let register = 0xffff;
  for (const byte of bytes) {
    register ^= byte;
    for (let bit = 0; bit < 8; bit++) register = register & 1 ? (register >>> 1) ^ 0xa001 : register >>> 1;
  }
  return [register & 0xff, register >>> 8];
}
