import { expect, it } from 'vitest';
import { checkText } from '../testing/check-text.js';
import { readSheet } from './read-sheet.js';

const unread = 'Nothing from here on is read, because there are too many mistakes before it; mend those first.';
const store = (name: string) => `store ${name} {\n  bus y : rs485 {\n    from a.b : C\n  }\n}\n`;

it.each([
  ['characters that mean nothing, on one line', '@'.repeat(200_000)],
  ['control characters', '\x01\x02'.repeat(100_000)],
  ['lines that mean nothing', '§ ±\n'.repeat(50_000)],
  ['one statement without its length, over and over', `store x { bus y : rs485 {${' from a to b'.repeat(20_000)}`],
])('reads %s up to where it is hopeless, and says so', (_, garbage) => {
  const text = `${store('good')}${garbage}`;
  const { sheet, problems } = readSheet(text);
  expect(sheet.declarations[0]).toMatchObject({ type: 'StoreDeclaration', name: { text: 'good' } });
  expect(problems.at(-1)?.message).toBe(unread);
  expect(problems[0]?.start).toBeGreaterThan(0);
  expect(problems[0]?.start).toBeLessThan(problems.at(-1)?.start ?? 0);
  expect(problems.at(-1)?.start).toBeLessThan(70_000);
});

it('reads less where the recovery cannot go on, however short the text', () => {
  const text = `store x { bus y : rs485 {${' from a to b'.repeat(4000)}`;
  expect(text.length).toBeLessThan(64 * 1024);
  const { problems } = readSheet(text);
  expect(problems.length).toBeGreaterThan(0);
  expect(readSheet(store('good')).problems).toEqual([]);
  expect(readSheet('store x {').problems).toHaveLength(1);
});

it('reads a long text with a few slips whole', () => {
  const stores = Array.from({ length: 4000 }, (_, index) => store(`s${index}`));
  const text = [...stores.slice(0, 3000), 'store slip {\n  buss\n}\n', ...stores.slice(3000)].join('');
  expect(text.length).toBeGreaterThan(3 * 64 * 1024);
  const { sheet, problems } = readSheet(text);
  expect(problems.map(({ message }) => message)).not.toContain(unread);
  expect(problems.length).toBeGreaterThan(0);
  expect(sheet.declarations.length).toBeGreaterThanOrEqual(4000);
});

it('tells of a hopeless text nothing but its mistakes', () => {
  const text = `store x {\n  waive end-unterminated at nobody because "none"\n}\n${'@ # '.repeat(50_000)}`;
  expect(new Set(checkText(text).map(({ rule }) => rule))).toEqual(new Set(['syntax']));
});
