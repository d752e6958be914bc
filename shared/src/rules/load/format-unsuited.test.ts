/** Characters of Modbus RTU: MODBUS over Serial Line V1.02, 2.5.1. Of MS/TP: from memory of ANSI/ASHRAE 135 clause 9. */
import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { loadExample } from './example.js';

const told = (header: string) =>
  checkText(loadExample().replace('modbus-rtu 19200 8E1', header), ['format-unsuited']).map((finding) => [
    finding.message,
    ...finding.fixes().map(({ title }) => title),
  ]);

it.each(['8E1', '8O1', '8N2'])('takes %s on Modbus', (format) => {
  expect(told(`modbus-rtu 19200 ${format}`)).toEqual([]);
});

it.each([
  ['8N1', ['Write 8N2', 'Write 8E1']],
  ['8E2', ['Write 8E1']],
  ['8O2', ['Write 8O1']],
  ['7E1', ['Write 8E1']],
])('tells %s on Modbus, and what to write instead', (format, titles) => {
  expect(told(`modbus-rtu 19200 ${format}`)).toEqual([
    [expect.stringMatching(new RegExp(`^bus cases has characters ${format}; .+: set every device to `)), ...titles],
  ]);
});

it('takes 8N1 alone on MS/TP, and anything where nothing is said or the kind leaves it open', () => {
  expect(told('bacnet-mstp 38400 8N1')).toEqual([]);
  expect(told('bacnet-mstp 38400 8E1')).toHaveLength(1);
  expect(told('bacnet-mstp 38400')).toEqual([]);
  expect(told('rs485 19200 7E2')).toEqual([]);
});
