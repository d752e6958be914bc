import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BusBuilder, busOf } from '../testing/network.js';
import { type Shape, shapeOf, walkedShape } from './shape.js';

const shapeFrom = (draw: (bus: BusBuilder) => BusBuilder): Shape => draw(busOf('rs485')).built().study.shape;

describe('the shape of a bus', () => {
  it('of nothing is nothing', () => {
    expect(shapeOf(busOf('rs485').built().bus)).toMatchObject({ components: [], trunk: [], taps: [], closing: [] });
  });

  it('of a chain that starts at its end', () => {
    const shape = shapeFrom((bus) => bus.from('head').to('a', 10).to('b', 20).to('c', 0));
    expect(shape.ends).toEqual([0, 3]);
    expect(shape.trunk).toEqual([0, 1, 2, 3]);
    expect(shape.distance).toEqual([0, 10, 30, 30]);
    expect(shape.trunkDegree).toEqual([1, 2, 2, 1]);
    expect(shape.reachedBy).toEqual([undefined, 0, 1, 2]);
  });

  it('of a chain whose text starts in its middle', () => {
    const shape = shapeFrom((bus) => bus.from('head').to('a', 10).to('b', 20).from('head').to('c', 5).to('d', 5));
    expect(shape.ends).toEqual([2, 4]);
    expect(shape.trunk).toEqual([2, 1, 0, 3, 4]);
    expect(shape.distance).toEqual([0, 10, 30, 5, 10]);
  });

  it('of a plain chain is what a walk finds', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 1, maxLength: 20 }), (lengths) => {
        const builder = busOf('rs485').from('head');
        for (const [at, length] of lengths.entries()) builder.to(`n${at}`, length);
        const { bus } = builder.built();
        const walked = walkedShape(bus);
        const seen = shapeOf(bus);
        expect(Object.fromEntries(Object.keys(walked).map((key) => [key, seen[key as keyof Shape]]))).toEqual(walked);
      }),
    );
  });

  it('of a single landing has no ends', () => {
    const shape = shapeFrom((bus) => bus.from('head'));
    expect(shape.ends).toBeUndefined();
    expect(shape.trunk).toEqual([]);
  });

  it('of a star', () => {
    const shape = shapeFrom((bus) => bus.from('head').to('a', 10).from('head').to('b', 20).from('head').to('c', 30));
    expect(shape.branches).toEqual([0]);
    expect(shape.ends).toBeUndefined();
  });

  it('of a ring goes the shorter way round and names the run that closes it', () => {
    const shape = shapeFrom((bus) => bus.from('head').to('a', 10).to('b', 20).to('c', 30).to('head', 5));
    expect(shape.closing).toEqual([3]);
    expect(shape.ends).toBeUndefined();
    expect(shape.distance).toEqual([0, 10, 30, 5]);
    expect(shape.reachedBy).toEqual([undefined, 0, 1, 3]);
    expect(shape.trunkDegree).toEqual([2, 2, 2, 2]);
  });

  it('counts a run back to its own landing as closing, not as cables that meet there', () => {
    const shape = shapeFrom((bus) => bus.from('head').to('a', 10).to('a', 3));
    expect(shape.closing).toEqual([1]);
    expect(shape.trunkDegree).toEqual([1, 1]);
  });

  it('of an island', () => {
    const shape = shapeFrom((bus) => bus.from('head').to('a', 10).from('b').to('c', 20));
    expect(shape.components).toEqual([
      [0, 1],
      [2, 3],
    ]);
    expect(shape.componentOf).toEqual([0, 0, 1, 1]);
    expect(shape.distance).toEqual([0, 10, undefined, undefined]);
    expect(shape.ends).toBeUndefined();
  });

  it('leaves spare runs out', () => {
    const shape = shapeFrom((bus) => bus.from('head').to('a', 10).to('head', 20, { spare: true }));
    expect(shape.closing).toEqual([]);
    expect(shape.ends).toEqual([0, 1]);
  });

  it('a run that goes on from an end to nowhere leaves open where the bus ends', () => {
    const shape = shapeFrom((bus) => bus.from('head').to('a', 10).loose(7));
    expect(shape.loose).toEqual([1]);
    expect(shape.trunkDegree).toEqual([1, 1]);
    expect(shape.ends).toBeUndefined();
  });

  it('a run to nowhere between the ends makes no branch and takes no end away', () => {
    const shape = shapeFrom((bus) => bus.from('head').to('a', 10).loose(7).to('b', 10));
    expect(shape.loose).toEqual([1]);
    expect(shape.branches).toEqual([]);
    expect(shape.ends).toEqual([0, 2]);
  });

  it('of taps: what hangs behind them is no trunk', () => {
    const shape = shapeFrom((bus) =>
      bus
        .from('head')
        .to('a', 10)
        .tap('p', 2)
        .to('b', 10)
        .from('p')
        .to('q', 3)
        .tap('r', 4)
        .loose(1)
        .from('a')
        .tap('s', 6),
    );
    // head 0, a 1, p 2, b 3, q 4, r 5, s 6; runs head-a 0, a-p 1, a-b 2, p-q 3, q-r 4, q-nowhere 5, a-s 6.
    expect(shape.ends).toEqual([0, 3]);
    expect([...shape.onTap].sort()).toEqual([2, 4, 5, 6]);
    expect(shape.trunkDegree).toEqual([1, 2, 0, 1, 0, 0, 0]);
    expect(shape.taps).toEqual([
      { run: 1, at: 1, reach: 9, total: 10 },
      { run: 4, at: 4, reach: 4, total: 4 },
      { run: 6, at: 1, reach: 6, total: 6 },
    ]);
    expect(shape.distance).toEqual([0, 10, 12, 20, 15, 19, 16]);
  });

  it('of a tap that closes a loop or ends nowhere', () => {
    const shape = shapeFrom((bus) => bus.from('head').to('a', 10).tap('head', 4).loose(5, { tap: true }));
    expect(shape.closing).toEqual([1]);
    expect(shape.taps).toEqual([
      { run: 1, at: 0, reach: 4, total: 4 },
      { run: 2, at: 1, reach: 5, total: 5 },
    ]);
  });

  it('of a chain of 10,000 landings, and of a tap as deep', () => {
    const chain = busOf('rs485').from('n0');
    for (let index = 1; index < 10_000; index++) chain.to(`n${index}`, 1);
    chain.tap('t0', 1).from('t0');
    for (let index = 1; index < 10_000; index++) chain.to(`t${index}`, 1);
    const { shape } = chain.built().study;
    expect(shape.ends).toEqual([0, 9_999]);
    expect(shape.distance[9_999]).toBe(9_999);
    expect(shape.taps).toMatchObject([{ reach: 10_000, total: 10_000 }]);
  });
});

describe('the shape of any bus', () => {
  const landings = 12;
  const runs = fc.array(
    fc.record({
      from: fc.nat(landings - 1),
      to: fc.nat(landings - 1),
      length: fc.integer({ min: 0, max: 100 }),
      tap: fc.boolean(),
    }),
    { minLength: 1, maxLength: 20 },
  );

  it('has as many closing runs as runs beyond a forest, and the shortest distances', () => {
    fc.assert(
      fc.property(runs, (drawn) => {
        const builder = busOf('rs485');
        for (const { from, to, length, tap } of drawn) {
          builder.from(`n${from}`);
          if (tap) builder.tap(`n${to}`, length);
          else builder.to(`n${to}`, length);
        }
        const { bus, study } = builder.built();
        const { shape } = study;
        expect(shape.closing.length).toBe(bus.runs.length - bus.landings.length + shape.components.length);
        expect(shape.components.flat().sort((left, right) => left - right)).toEqual([...bus.landings.keys()]);
        expect([...shape.walk].sort((left, right) => left - right)).toEqual([...bus.landings.keys()]);
        // Bellman and Ford's relaxation as a second, simpler way to the distances.
        const distance = bus.landings.map((_, index) => (index === 0 ? 0 : Number.POSITIVE_INFINITY));
        for (let round = 0; round < bus.landings.length; round++) {
          for (const run of bus.runs) {
            distance[run.to!] = Math.min(distance[run.to!]!, distance[run.from]! + run.length);
            distance[run.from] = Math.min(distance[run.from]!, distance[run.to!]! + run.length);
          }
        }
        expect(shape.distance.map((value) => value ?? Number.POSITIVE_INFINITY)).toEqual(distance);
        expect(shape.taps.map(({ run }) => run)).toEqual(bus.runs.filter(({ tap }) => tap).map(({ index }) => index));
        for (const tap of shape.taps) {
          expect(bus.runs[tap.run]!.length).toBeLessThanOrEqual(tap.reach);
          expect(tap.reach).toBeLessThanOrEqual(tap.total);
          expect(tap.total).toBeLessThanOrEqual(study.length);
        }
      }),
    );
  });
});
