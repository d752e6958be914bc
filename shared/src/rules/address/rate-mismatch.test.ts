import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { rateMismatch } from './rate-mismatch.js';

const found = (text: string) => checkText(text, ['rate-mismatch']);

const { bad } = rateMismatch.explanation;

it('offers the nearest lower rate first', () => {
  expect(
    found(bad)[0]
      ?.fixes()
      .map(({ title }) => title),
  ).toEqual(['Run bus chillers at 19,200 bit/s', 'Run bus chillers at 9,600 bit/s']);
});

it('offers only rates that all devices have', () => {
  const head = bad.replace('    load 1/8\n', '    load 1/8\n    rates 9600 bit/s, 38400 bit/s\n');
  expect(
    found(head)[0]
      ?.fixes()
      .map(({ title }) => title),
  ).toEqual(['Run bus chillers at 9,600 bit/s']);
});

it('says nothing of a bus without a rate or a port without rates', () => {
  expect(found(bad.replace(' 38400 8E1', ''))).toEqual([]);
  expect(found(bad.replace(/ +rates .*\n/, ''))).toEqual([]);
});
