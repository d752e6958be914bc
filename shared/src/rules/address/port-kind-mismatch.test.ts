import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { portKindMismatch } from './port-kind-mismatch.js';

const found = (text: string) => checkText(text, ['port-kind-mismatch']);

const { bad } = portKindMismatch.explanation;

it('counts a protocol that an RS-485 port does not speak', () => {
  const other = bad.replace('.link', '.field').replace('speaks modbus-rtu', 'speaks bacnet-mstp');
  expect(found(other)[0]?.message).toContain('port field of caseA1 is rs485 for bacnet-mstp');
});

it('tells a device that has no port for the bus', () => {
  const none = bad.replace('.link', '').replace('speaks modbus-rtu', 'speaks bacnet-mstp');
  expect(found(none).map(({ message }) => message)).toEqual([
    'caseA1 has no port for modbus-rtu; its ports are link (can) and field (rs485 for bacnet-mstp); land another device there, or write the kind that bus chillers really is',
  ]);
});

it('stays silent about a port whose kind is unknown', () => {
  expect(found(bad.replace('port link : can', 'port link : zigzag'))).toEqual([]);
});
