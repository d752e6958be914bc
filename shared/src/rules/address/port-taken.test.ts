import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { portTaken } from './port-taken.js';

const found = (text: string) => checkText(text, ['port-taken']);

const { bad } = portTaken.explanation;

it('points at the second bus and names the first', () => {
  const [finding] = found(bad);
  expect(finding?.bus).toBe('freezers');
  expect(finding?.message).toContain('carries bus chillers already');
  expect(finding?.fixes().map(({ title }) => title)).toEqual(['Land on head.field2']);
});

it('counts a port that was left to be found', () => {
  const single = bad.replace(/ {2}port field2[\s\S]*?\n {2}\}\n/, '').replaceAll('head.field1', 'head');
  expect(found(single)).toHaveLength(1);
});
