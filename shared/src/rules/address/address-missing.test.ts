import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { soundFile } from '../pair/example.js';

const found = (text: string) => checkText(text, ['address-missing']);

const missing = soundFile.replace(' address 12', '');

it('offers the next free address that can be set', () => {
  expect(found(missing)[0]?.message).toContain('write address 12');
  const full = missing.replace('dial 1..99', 'dial 10..11');
  expect(
    found(full)[0]
      ?.fixes()
      .map(({ title }) => title),
  ).toEqual(['Give caseA2 address 10, the next free one']);
  expect(found(full.replace('dial 10..11', 'dial 11..11'))[0]?.fixes()).toEqual([]);
});

it('asks for none where the port takes none, and of no Modbus head', () => {
  // Modbus serial line guide V1.02, 2.2: the master has no address.
  expect(found(missing.replace('    address dial 1..99\n', ''))).toEqual([]);
  expect(found(soundFile.replace('    load 1/8\n', '    load 1/8\n    address software 0..127\n'))).toEqual([]);
});

it('asks the head of MS/TP for one, who is a station like the others', () => {
  const mstp = soundFile
    .replace('modbus-rtu 9600 8E1', 'bacnet-mstp 9600')
    .replace('    load 1/8\n', '    load 1/8\n    address software 0..127\n');
  expect(found(mstp).map(({ at }) => at)).toEqual(['head']);
});

it('judges no absence in damaged text', () => {
  expect(found(missing.replace('38 ft to', '38 ft onto'))).toEqual([]);
});
