import { expect, it } from 'vitest';
import { clean, cleaned } from './clean.js';

it('makes spaces of line breaks and a mark of what no format can carry, and leaves all else alone', () => {
  expect(clean('two\r\nlines\tand \u202eturned\u0007 \ud800')).toBe('two lines and \uFFFDturned\uFFFD \uFFFD');
  expect(clean('Gefriert\u00fcr \u51b7\u51cd \u{1f600}')).toBe('Gefriert\u00fcr \u51b7\u51cd \u{1f600}');
});

it('reaches every text of plain data, and gives back what needs nothing', () => {
  const fit = { list: ['a', 1, null], inner: { text: 'b' } };
  expect(cleaned(fit)).toBe(fit);
  const unfit = { list: ['a\nb', 1, fit], inner: { text: 'b\u0000' }, rest: fit };
  const made = cleaned(unfit);
  expect(made).toEqual({ list: ['a b', 1, fit], inner: { text: 'b\uFFFD' }, rest: fit });
  expect(made.rest).toBe(fit);
  expect(unfit.list[0]).toBe('a\nb');
});
