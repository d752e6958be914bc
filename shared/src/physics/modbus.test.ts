/** Against MODBUS over Serial Line V1.02: 2.5.1.1 (silences), 6.2.2 (checksum); times computed from its 11 bits. */
import { describe, expect, it } from 'vitest';
import { bitsPerSecond, seconds } from '../quantity.js';
import * as modbus from './modbus.js';

describe('Modbus on a serial line', () => {
  it.each([
    [9600, 1.1458, 1.719, 4.01],
    [19_200, 0.5729, 0.859, 2.005],
    [38_400, 0.2865, 0.75, 1.75],
    [115_200, 0.0955, 0.75, 1.75],
  ])('at %i bit/s a character takes %f ms, t1.5 %f ms, t3.5 %f ms', (rate, character, within, between) => {
    const at = bitsPerSecond(rate);
    expect(1000 * modbus.characterTime(at)).toBeCloseTo(character, 4);
    expect(1000 * modbus.gapWithinFrame(at)).toBeCloseTo(within, 3);
    expect(1000 * modbus.gapBetweenFrames(at)).toBeCloseTo(between, 2);
  });

  it('reads ten holding registers of device 1 by 01 03 00 00 00 0A C5 CD', () => {
    expect(modbus.checksum([0x01, 0x03, 0x00, 0x00, 0x00, 0x0a])).toEqual([0xc5, 0xcd]);
  });

  it('has 4B 37 for the check value of this checksum over the digits 1 to 9', () => {
    // Catalogue of parametrised CRC algorithms, CRC-16/MODBUS: check value 4B37.
    expect(modbus.checksum([...'123456789'].map((digit) => digit.charCodeAt(0)))).toEqual([0x37, 0x4b]);
  });

  it('asks in 9.17 ms, is answered in 28.65 ms and polls in 45.8 ms and the delay of the device at 9600 bit/s', () => {
    const rate = bitsPerSecond(9600);
    expect(1000 * modbus.frameTime(rate, modbus.readRequestBytes)).toBeCloseTo(9.17, 2);
    expect(1000 * modbus.frameTime(rate, modbus.readAnswerBytes(10))).toBeCloseTo(28.65, 2);
    expect(1000 * modbus.pollTime(rate, { registers: 10, replyDelay: seconds(0) })).toBeCloseTo(45.8, 1);
    expect(1000 * modbus.frameTime(rate, 256)).toBeCloseTo(293.3, 1);
    expect(modbus.pollCycle(rate, 24)).toBeCloseTo(24 * 0.05585, 3);
  });
});
