import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { soundFile } from './example.js';

const found = (text: string) => checkText(text, ['polarity-crossed']);

const crossed = soundFile.replace('address 11', 'address 11 crossed');

it('is an error where the port requires polarity and where it says nothing', () => {
  // Modbus serial line guide V1.02, 3.3: binary 1 is D1 above D0, so the sign matters on every RS-485 pair.
  for (const text of [crossed, crossed.replaceAll('    polarity required\n', '')]) {
    expect(found(text).map(({ severity, at }) => [severity, at])).toEqual([['error', 'caseA1']]);
  }
});

it('is a remark where the port does not care', () => {
  expect(found(crossed.replaceAll('polarity required', 'polarity free')).map(({ severity }) => severity)).toEqual([
    'info',
  ]);
});

it('is a remark on free topology, whose channel does not care', () => {
  const free = crossed
    .replaceAll('polarity required\n', '')
    .replaceAll(': rs485', ': free-topology')
    .replace('modbus-rtu 9600 8E1', 'free-topology');
  expect(found(free).map(({ severity }) => severity)).toEqual(['info']);
});

it('says that a splice swaps everything behind it', () => {
  const spliced = soundFile.replace('38 ft to', '10 ft to splice box crossed\n    38 ft to');
  expect(found(spliced)[0]?.message).toContain('everything behind it');
});

it('stays silent where the device is unknown', () => {
  expect(found(crossed.replace('caseA1 : CaseBoard', 'caseA1 : Absent'))).toEqual([]);
});
