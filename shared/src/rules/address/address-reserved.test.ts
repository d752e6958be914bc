import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { soundFile } from '../pair/example.js';

const found = (text: string) => checkText(text, ['address-reserved']);

it.each([0, 248, 255])('finds %i, which no Modbus device has', (address) => {
  // Modbus serial line guide V1.02, 2.2: 0 is the broadcast, 248 to 255 are reserved.
  const text = soundFile.replace('address 12', `address ${address}`);
  expect(found(text)).toHaveLength(1);
  expect(checkText(text, ['address-out-of-range', 'address-not-settable'])).toEqual([]);
});

it.each([1, 247, 256])('leaves %i alone', (address) => {
  expect(found(soundFile.replace('address 12', `address ${address}`))).toEqual([]);
});
