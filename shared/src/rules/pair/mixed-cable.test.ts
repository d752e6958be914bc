import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { mixedCable } from './mixed-cable.js';

const found = (text: string) => checkText(text, ['mixed-cable']);

const { bad } = mixedCable.explanation;

it('says how the cables differ', () => {
  expect(found(bad)[0]?.message).toContain('95 ohm, the rest 120 ohm, 18 AWG, the rest 22 AWG');
});

it('takes 0.34 mm2 for 22 AWG, as the trade does', () => {
  // ASTM B258: 22 AWG is 0.644 mm across, which is 0.326 mm2; 0.34 mm2 is 4 % more.
  const metric = bad.replace('95 ohm', '120 ohm').replace('18 AWG', '0.34 mm2');
  expect(found(metric)).toEqual([]);
  expect(found(metric.replace('0.34 mm2', '0.5 mm2'))).toHaveLength(1);
});

it('takes impedances within 10 % for the same', () => {
  const same = bad.replace('18 AWG', '22 AWG');
  expect(found(same.replace('95 ohm', '110 ohm'))).toEqual([]);
  expect(found(same.replace('95 ohm', '109 ohm'))).toHaveLength(1);
});

it('leaves spare runs and cables that are unsuited altogether to others', () => {
  expect(found(bad.replace('22 ft on', '22 ft spare on'))).toEqual([]);
  expect(found(bad.replace('twisted pairs 1', 'untwisted'))).toEqual([]);
});
