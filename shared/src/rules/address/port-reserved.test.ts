import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { portReserved } from './port-reserved.js';

const found = (text: string) => checkText(text, ['port-reserved']);

const { bad } = portReserved.explanation;

it('depends on the revision', () => {
  expect(found(bad)[0]?.message).toContain('not enabled on revision A (not enabled before revision B)');
  expect(found(bad.replace('SiteHead revision A', 'SiteHead revision B'))).toEqual([]);
});

it('warns where the revision is unsaid', () => {
  const unsaid = found(bad.replace('SiteHead revision A', 'SiteHead'));
  expect(unsaid.map(({ severity }) => severity)).toEqual(['warning']);
  expect(unsaid[0]?.fixes().map(({ title }) => title)).toContain('Make head revision B, which enables port field2');
});

it('is sure without a revision where no revision enables the port', () => {
  const never = bad.replace('SiteHead revision A', 'SiteHead').replace('reserved in A', 'reserved');
  expect(found(never).map(({ severity }) => severity)).toEqual(['error']);
});
