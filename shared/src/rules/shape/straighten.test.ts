import { describe, expect, it } from 'vitest';
import { projectOf } from '../../../../language/src/testing/check-text.js';
import { shapeOf } from '../../figures/shape.js';
import { metresPerFoot } from '../../quantity.js';
import { exampleOf } from './example.js';
import { shortestChain } from './straighten.js';

/** A repeatable stream of numbers from 0 to 1: a linear congruential generator (Numerical Recipes, 2nd ed., 7.1). */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** The cable of the shortest chain, by trying every order of the landings. */
function shortestByTrial(distance: readonly (readonly number[])[]): number {
  let best = Number.POSITIVE_INFINITY;
  const extend = (at: number, left: readonly number[], length: number): void => {
    if (left.length === 0) best = Math.min(best, length);
    for (const next of left)
      extend(
        next,
        left.filter((other) => other !== next),
        length + distance[at]![next]!,
      );
  };
  const all = [...distance.keys()];
  for (const start of all)
    extend(
      start,
      all.filter((other) => other !== start),
      0,
    );
  return best;
}

describe('the shortest chain through a tree', () => {
  it.each(Array.from({ length: 20 }, (_, seed) => seed))('is as short as the best of all orders (seed %i)', (seed) => {
    const next = numbers(seed);
    const count = 4 + Math.floor(next() * 4);
    const distance: number[][] = [[0]];
    const statements = ['from n0 : CaseBoard'];
    for (let node = 1; node < count; node++) {
      const parent = Math.floor(next() * node);
      const feet = 1 + Math.floor(next() * 90);
      statements.push(`from n${parent}`, `${feet} ft to n${node} : CaseBoard`);
      distance.push(distance.map((row, other) => (other === parent ? feet : row[parent]! + feet)));
      distance.forEach((row, other) => {
        row[node] = other === node ? 0 : distance[node]![other]!;
      });
    }
    const store = projectOf({ 'test.pair': exampleOf(statements) }).storesOf('test.pair')[0]!;
    const bus = store.buses[0]!;
    const { start, links } = shortestChain(bus, shapeOf(bus));
    expect(new Set([start, ...links.map(({ landing }) => landing)]).size).toBe(count);
    const length = links.reduce((sum, link) => sum + link.length, 0) / metresPerFoot;
    expect(length).toBeCloseTo(shortestByTrial(distance), 6);
  });

  it('walks a star of a thousand arms and a chain of ten thousand', () => {
    const star = [
      'from n0 : CaseBoard',
      ...Array.from({ length: 1000 }, (_, arm) => `from n0 1 ft to m${arm} : CaseBoard`),
    ];
    const chain = [
      'from n0 : CaseBoard',
      ...Array.from({ length: 10_000 }, (_, node) => `1 ft to m${node} : CaseBoard`),
    ];
    for (const [statements, feet] of [
      [star, 1998],
      [chain, 10_000],
    ] as const) {
      const bus = projectOf({ 'test.pair': exampleOf(statements) }).storesOf('test.pair')[0]!.buses[0]!;
      const { links } = shortestChain(bus, shapeOf(bus));
      expect(links.reduce((sum, link) => sum + link.length, 0) / metresPerFoot).toBeCloseTo(feet, 3);
    }
  });
});
