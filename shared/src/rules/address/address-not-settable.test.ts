import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { soundFile } from '../pair/example.js';

const found = (text: string) => checkText(text, ['address-not-settable']);

it('keeps to what the dial shows, both ends included', () => {
  for (const address of [1, 99]) expect(found(soundFile.replace('address 12', `address ${address}`))).toEqual([]);
  const [finding] = found(soundFile.replace('address 12', 'address 100'));
  expect(finding?.message).toBe('caseA2 cannot be set to address 100: its dial shows 1 to 99; give it one of these');
});

it('leaves an address that the bus does not have to the rule about that', () => {
  expect(found(soundFile.replace('address 12', 'address 300'))).toEqual([]);
});
