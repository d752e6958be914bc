import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isUnknown } from '../known.js';
import { busOf } from '../testing/network.js';
import { longestWay } from './longest-way.js';

const byLength = { run: ({ length }: { length: number }) => length, end: () => 0 };

/** Random connected or broken graphs: each run joins two of a few landings. */
const graphs = fc.array(fc.tuple(fc.nat(6), fc.nat(6), fc.integer({ min: 1, max: 50 })), {
  minLength: 1,
  maxLength: 9,
});

function graphOf(runs: readonly (readonly [number, number, number])[]) {
  const bus = busOf('free-topology');
  for (const [from, to, length] of runs) bus.from(`n${from}`).to(`n${to}`, length);
  return bus.built().study;
}

/** Every simple way, by the definition. */
function byDefinition(runs: readonly (readonly [number, number, number])[]): number | undefined {
  let longest: number | undefined;
  const walk = (at: number, visited: readonly number[], length: number) => {
    if (visited.length > 1) longest = Math.max(longest ?? 0, length);
    for (const [from, to, metres] of runs) {
      const next = from === at ? to : to === at ? from : undefined;
      if (next !== undefined && !visited.includes(next)) walk(next, [...visited, next], length + metres);
    }
  };
  for (const start of new Set(runs.flatMap(([from, to]) => [from, to]))) walk(start, [start], 0);
  return longest;
}

describe('the longest way', () => {
  it('is what trying all ways finds, with loops and without', () => {
    fc.assert(
      fc.property(graphs, (runs) => {
        const { bus, shape } = graphOf(runs);
        const found = longestWay(bus, shape, byLength);
        if (isUnknown(found)) throw new Error(found.unknown);
        expect(found?.length).toBe(byDefinition(runs));
      }),
      { numRuns: 300 },
    );
  });

  it('round a ring is the longer of the two ways', () => {
    const { bus, shape } = graphOf([
      [0, 1, 10],
      [1, 2, 20],
      [2, 0, 30],
    ]);
    expect(longestWay(bus, shape, byLength)).toMatchObject({ length: 50 });
  });

  it('ends only where it may, and counts what the ends add', () => {
    const { bus, shape } = busOf('can').from('a').to('b', 10).to('c', 5).to('d', 100).built().study;
    const ends = [50, 1, 2, undefined];
    const way = longestWay(bus, shape, { run: ({ length }) => length, end: (landing) => ends[landing] });
    expect(way).toEqual({ from: 0, to: 2, length: 50 + 15 + 2 });
  });

  it('is told to be unknown where loops are too many, in little time', () => {
    const runs: [number, number, number][] = [];
    for (let from = 0; from < 14; from++) for (let to = from + 1; to < 14; to++) runs.push([from, to, 1]);
    const { bus, shape } = graphOf(runs);
    expect(longestWay(bus, shape, byLength)).toMatchObject({ unknown: expect.stringContaining('too many loops') });
  });

  it('of a long chain is found without recursion', () => {
    const chain = busOf('free-topology').from('n0');
    for (let node = 1; node < 20_000; node++) chain.to(`n${node}`, 1);
    const { bus, shape } = chain.built().study;
    expect(longestWay(bus, shape, byLength)).toMatchObject({ length: 19_999 });
  });
});
