import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { portUnstated } from './port-unstated.js';

const found = (text: string) => checkText(text, ['port-unstated']);

const { bad } = portUnstated.explanation;

it('offers one fix for each port', () => {
  expect(
    found(bad)[0]
      ?.fixes()
      .map(({ title }) => title),
  ).toEqual(['Land on head.field1', 'Land on head.field2']);
});

it('has no doubt where all but one are reserved', () => {
  expect(found(bad.replace('port field2 : rs485 {', 'port field2 : rs485 {\n    reserved "for later"'))).toEqual([]);
});
