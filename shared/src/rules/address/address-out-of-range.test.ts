import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { soundFile } from '../pair/example.js';

const found = (text: string) => checkText(text, ['address-out-of-range']);

const withAddress = (address: string, kind = 'modbus-rtu 9600 8E1') =>
  soundFile.replace('address 12', `address ${address}`).replace('modbus-rtu 9600 8E1', kind);

it('keeps Modbus to 1 to 247, with the reserved ones to another rule', () => {
  // Modbus serial line guide V1.02, 2.2.
  for (const address of ['1', '247', '0', '248', '255']) expect(found(withAddress(address)), address).toEqual([]);
  for (const address of ['256', '-1', '12.5']) expect(found(withAddress(address)), address).toHaveLength(1);
});

it('keeps MS/TP to 0 to 254', () => {
  // ASHRAE 135 clause 9: 255 is the broadcast.
  for (const address of ['0', '254']) expect(found(withAddress(address, 'bacnet-mstp 9600')), address).toEqual([]);
  expect(found(withAddress('255', 'bacnet-mstp 9600'))).toHaveLength(1);
});

it('keeps a head on MS/TP, which is a master, to 0 to 127', () => {
  // ASHRAE 135 clause 9: masters have 0 to 127, slaves up to 254.
  const withHead = (address: string) =>
    soundFile
      .replace('from head : SiteHead', `from head : SiteHead address ${address}`)
      .replace('modbus-rtu 9600 8E1', 'bacnet-mstp 9600');
  expect(found(withHead('127'))).toEqual([]);
  expect(found(withHead('128'))).toMatchObject([{ message: expect.stringContaining('0 to 127'), at: 'head' }]);
});

it('wants a whole number everywhere', () => {
  expect(found(withAddress('1.5', 'rs485'))).toHaveLength(1);
  expect(found(withAddress('5000', 'rs485'))).toEqual([]);
});
