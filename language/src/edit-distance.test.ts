import fc from 'fast-check';
import { expect, it } from 'vitest';
import { abbreviates, editDistance } from './edit-distance.js';

/**
 * The recursive definition of the optimal string alignment distance: L. Boytsov, 'Indexing methods for approximate
 * dictionary searching', ACM Journal of Experimental Algorithmics 16 (2011), 1.1.
 */
function byDefinition(left: string, right: string): number {
  if (left === '' || right === '') return left.length + right.length;
  const [leftEnd, rightEnd] = [left.at(-1), right.at(-1)];
  const ways = [
    byDefinition(left.slice(0, -1), right) + 1,
    byDefinition(left, right.slice(0, -1)) + 1,
    byDefinition(left.slice(0, -1), right.slice(0, -1)) + (leftEnd === rightEnd ? 0 : 1),
  ];
  if (left.length > 1 && right.length > 1 && leftEnd === right.at(-2) && left.at(-2) === rightEnd) {
    ways.push(byDefinition(left.slice(0, -2), right.slice(0, -2)) + 1);
  }
  return Math.min(...ways);
}

it('is what its definition says', () => {
  const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 5 });
  fc.assert(
    fc.property(word, word, (left, right) => {
      const distance = byDefinition(left, right);
      expect(editDistance(left, right)).toBe(distance);
      expect(editDistance(left, right, 2) <= 2).toBe(distance <= 2);
    }),
  );
});

// Values that textbooks print: Levenshtein's example of Jurafsky & Martin, 'Speech and Language Processing', ch. 2
// (with substitutions at 1), and the pair by which optimal string alignment is told from the unrestricted distance.
it.each([
  ['intention', 'execution', 5],
  ['kitten', 'sitting', 3],
  ['ca', 'abc', 3],
  ['haed', 'head', 1],
])('%s and %s are %d apart', (left, right, distance) => {
  expect(editDistance(left, right)).toBe(distance);
});

it.each([
  ['adr', 'address', true],
  ['addr', 'address', true],
  ['colour', 'colours', true],
  ['ad', 'address', false],
  ['dress', 'address', false],
  ['address', 'address', false],
])('%s for %s: %s', (short, long, is) => {
  expect(abbreviates(short, long)).toBe(is);
});
