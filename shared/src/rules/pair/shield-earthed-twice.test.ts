import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { soundFile } from './example.js';

const found = (text: string) => checkText(text, ['shield-earthed-twice']);

const earthedAt = (...names: string[]) =>
  soundFile.replace('shield earthed at head', names.map((name) => `shield earthed at ${name}`).join('\n    '));

it('tells several earths of one shield once, with all of them', () => {
  // Modbus serial line guide V1.02, 3.6: one end of each cable.
  const [finding, ...others] = found(earthedAt('caseA2', 'caseA1', 'head'));
  expect(others).toEqual([]);
  expect(finding?.message).toContain('3 points (caseA2, caseA1, head)');
  expect(finding?.related).toHaveLength(2);
});

it('keeps the earth at the head first', () => {
  const titles = found(earthedAt('caseA2', 'head'))[0]
    ?.fixes()
    .map(({ title }) => title);
  expect(titles).toEqual(['Earth the shield at head alone', 'Earth the shield at caseA2 alone']);
});

it('calls a repetition of one point a remark', () => {
  expect(found(earthedAt('head', 'head')).map(({ severity }) => severity)).toEqual(['info']);
});
