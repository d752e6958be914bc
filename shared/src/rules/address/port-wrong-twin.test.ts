import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { portWrongTwin } from './port-wrong-twin.js';

const found = (text: string) => checkText(text, ['port-wrong-twin']);

const { bad } = portWrongTwin.explanation;

it('offers the right one of the two', () => {
  expect(
    found(bad)[0]
      ?.fixes()
      .map(({ title }) => title),
  ).toEqual(['Land on head.field']);
});

it('leaves a twin that is not enabled to the rule about that', () => {
  const reserved = bad.replace('twin of field', 'reserved "for later"\n    twin of field');
  expect(checkText(reserved, ['port-wrong-twin', 'port-reserved']).map(({ rule }) => rule)).toEqual(['port-reserved']);
});
