/** Checked against the text document of the protocol's own library, which counts in offsets. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { movedBy } from './moved-place.js';

const create = (text: string) => TextDocument.create('memory:a.pair', 'fieldpair', 0, text);
const texts = fc.array(fc.constantFrom('a', 'bc', '\n', 'é', '{'), { maxLength: 12 }).map((parts) => parts.join(''));

test('moves with the text before it and stays put for the text after it', () => {
  const edit = fc.tuple(fc.nat(30), fc.nat(30), fc.nat(30), texts);
  fc.assert(
    fc.property(texts, edit, (before, [first, second, third, inserted]) => {
      const length = before.length + 1;
      const place = third % length;
      const start = Math.min(first % length, second % length);
      const end = Math.max(first % length, second % length);
      const after = before.slice(0, start) + inserted + before.slice(end);
      const expected = place < start ? place : place < end ? start : place - (end - start) + inserted.length;
      const document = create(before);
      const range = { start: document.positionAt(start), end: document.positionAt(end) };
      const moved = movedBy(document.positionAt(place), [{ range, text: inserted }]);
      expect(moved).toEqual(create(after).positionAt(expected));
    }),
  );
});

test('takes several changes, the last in the text first', () => {
  const at = (line: number, character: number) => ({ line, character });
  const changes = [
    { range: { start: at(5, 2), end: at(5, 2) }, text: 'behind' },
    { range: { start: at(3, 0), end: at(4, 0) }, text: '' },
    { range: { start: at(0, 0), end: at(0, 0) }, text: '\n\n' },
  ];
  expect(movedBy(at(4, 7), changes)).toEqual(at(5, 7));
});
