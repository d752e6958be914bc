import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { soundFile } from './example.js';

const told = (text: string) => checkText(text, ['cable-unstated', 'unknown-name']);

it('tells a bus without a cable once, at its kind', () => {
  const text = soundFile.replace(' on ShieldedPair22', '');
  const [finding, ...others] = told(text);
  expect(others).toEqual([]);
  expect(finding?.message).toMatch(/^2 runs of bus chillers \(60 ft\) do not say which cable they are, /);
  expect(text.slice(finding!.place.start, finding!.place.end)).toBe('modbus-rtu');
});

it('tells a run that is left out where others name theirs', () => {
  const text = soundFile.replace(' on ShieldedPair22', '').replace('38 ft', '38 ft on ShieldedPair22');
  const [finding] = told(text);
  expect(finding?.message).toMatch(/^a run of bus chillers \(22 ft\) does not say which cable it is, /);
  expect(text.slice(finding!.place.start, finding!.place.end)).toContain('22 ft');
});

it('says nothing where a cable is named and not known, which is told already, nor of spare cable', () => {
  expect(told(soundFile.replace(' on ShieldedPair22', ' on Missing')).map(({ rule }) => rule)).toEqual([
    'unknown-name',
  ]);
  expect(told(soundFile)).toEqual([]);
});
