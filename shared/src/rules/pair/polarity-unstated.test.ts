import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { soundFile } from './example.js';

const found = (text: string) => checkText(text, ['polarity-unstated']);

const unstated = soundFile.replace('    colours + white - blue shield drain\n', '');
const severities = (text: string) => found(text).map(({ severity }) => severity);

it('weighs as much as the devices do', () => {
  expect(severities(soundFile)).toEqual([]);
  expect(severities(unstated)).toEqual(['error']);
  expect(severities(unstated.replaceAll('    polarity required\n', ''))).toEqual(['warning']);
  expect(severities(unstated.replaceAll('polarity required', 'polarity free'))).toEqual(['info']);
});

it('does not take half a convention for one', () => {
  expect(severities(soundFile.replace('+ white - blue shield drain', '+ white'))).toEqual(['error']);
});

it("offers the cable's own colours, and nothing where the cable has none", () => {
  expect(
    found(unstated)[0]
      ?.fixes()
      .map(({ title }) => title),
  ).toEqual(['Write colours + white - blue (the order of cable ShieldedPair22)']);
  expect(found(unstated.replace('  colours white, blue\n', ''))[0]?.fixes()).toEqual([]);
});

it('judges no absence in damaged text', () => {
  expect(found(unstated.replace('22 ft to', '22 ft onto'))).toEqual([]);
});
