/** The two engines of the pair against each other and against laws that hold for every resistive network. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MeshPair } from './mesh-pair.js';
import type { PairCurrents, PairTopology, PairValues } from './pair.js';
import { TreePair } from './tree-pair.js';

interface DrawnPair {
  readonly topology: PairTopology;
  readonly values: PairValues;
  readonly currents: PairCurrents;
}

/** A random tree: every landing but the first hangs on an earlier one. */
const drawnTree: fc.Arbitrary<DrawnPair> = fc.integer({ min: 1, max: 14 }).chain((landingCount) => {
  const perLanding = <T>(value: fc.Arbitrary<T>) =>
    fc.array(value, { minLength: landingCount, maxLength: landingCount });
  const resistance = fc.oneof(
    { weight: 8, arbitrary: fc.double({ min: 0.01, max: 100, noNaN: true }) },
    { weight: 1, arbitrary: fc.constantFrom(0, Number.POSITIVE_INFINITY) },
  );
  const conductance = (likely: number) =>
    fc.oneof(
      { weight: 3, arbitrary: fc.constant(0) },
      { weight: 2, arbitrary: fc.double({ min: likely / 10, max: likely, noNaN: true }) },
    );
  return fc.record({
    topology: fc
      .tuple(...Array.from({ length: landingCount - 1 }, (_, index) => fc.nat(index)))
      .map((parents) => ({ landingCount, from: parents, to: parents.map((_, index) => index + 1) })),
    values: fc.record({
      resistances: fc.array(resistance, { minLength: landingCount - 1, maxLength: landingCount - 1 }),
      across: perLanding(conductance(0.02)),
      plusToCommon: perLanding(conductance(0.003)),
      minusToCommon: perLanding(conductance(0.003)),
    }),
    currents: fc.record({
      plus: perLanding(fc.double({ min: -0.01, max: 0.01, noNaN: true })),
      minus: perLanding(fc.double({ min: -0.01, max: 0.01, noNaN: true })),
    }),
  });
});

function treeOf({ topology }: DrawnPair): TreePair {
  const order = Array.from({ length: topology.landingCount }, (_, landing) => landing);
  return new TreePair(order, [-1, ...topology.from], [-1, ...topology.from.map((_, run) => run)]);
}

const close = (left: number, right: number, absolute = 1e-9) =>
  left === right || Math.abs(left - right) <= 1e-7 * Math.max(Math.abs(left), Math.abs(right)) + absolute;

describe('a pair without loops', () => {
  it('resists alike by sweeps and by nodal analysis', () => {
    fc.assert(
      fc.property(drawnTree, (drawn) => {
        const sweeps = treeOf(drawn).resistances(drawn.values);
        const nodal = new MeshPair(drawn.topology, drawn.values).resistances(drawn.values);
        for (const [landing, resistance] of sweeps.entries()) {
          expect(close(resistance, nodal[landing]!), `${resistance} and ${nodal[landing]} at ${landing}`).toBe(true);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('has the same levels by sweeps and by nodal analysis, where every part has a way to common', () => {
    fc.assert(
      fc.property(drawnTree, (drawn) => {
        const values = {
          ...drawn.values,
          plusToCommon: drawn.values.plusToCommon.map((value) => value + 1e-4),
          minusToCommon: drawn.values.minusToCommon.map((value) => value + 1e-4),
        };
        const sweeps = treeOf(drawn).differences(values, drawn.currents);
        const nodal = new MeshPair(drawn.topology, values).differences(values, drawn.currents);
        for (const [landing, level] of sweeps.entries()) {
          expect(close(level, nodal[landing]!), `${level} and ${nodal[landing]} at ${landing}`).toBe(true);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('is reciprocal: what a current here does there, it does here when it flows there', () => {
    fc.assert(
      fc.property(drawnTree, fc.nat(), fc.nat(), (drawn, one, other) => {
        const { landingCount } = drawn.topology;
        const pair = treeOf(drawn);
        const responseAt = (to: number, from: number) => {
          const nothing = new Array<number>(landingCount).fill(0);
          return pair.differences(drawn.values, { plus: nothing.with(from, 0.01), minus: nothing.with(from, -0.01) })[
            to
          ]!;
        };
        const [first, second] = [one % landingCount, other % landingCount];
        expect(close(responseAt(first, second), responseAt(second, first))).toBe(true);
      }),
    );
  });

  it('never resists less when something in it resists more (Rayleigh)', () => {
    fc.assert(
      fc.property(drawnTree, fc.double({ min: 1, max: 3, noNaN: true }), (drawn, factor) => {
        const more = {
          ...drawn.values,
          resistances: drawn.values.resistances.map((value) => value * factor),
          across: drawn.values.across.map((value) => value / factor),
        };
        const before = treeOf(drawn).resistances(drawn.values);
        const after = treeOf(drawn).resistances(more);
        for (const [landing, resistance] of before.entries()) {
          expect(0 < resistance && resistance <= after[landing]! * (1 + 1e-9)).toBe(true);
        }
      }),
    );
  });
});

describe('a pair with loops', () => {
  /** A ring of n equal runs with one terminator: two ways of n - k and k runs to it, by hand. */
  it('shares the current between both ways round a ring', () => {
    const landingCount = 6;
    const topology = { landingCount, from: [0, 1, 2, 3, 4, 5], to: [1, 2, 3, 4, 5, 0] };
    const none = new Array<number>(landingCount).fill(0);
    const values = {
      resistances: new Array<number>(landingCount).fill(3),
      across: none.with(0, 1 / 120),
      plusToCommon: none,
      minusToCommon: none,
    };
    const resistances = new MeshPair(topology, values).resistances(values);
    for (let landing = 0; landing < landingCount; landing++) {
      const wire = 1 / (1 / (3 * landing) + 1 / (3 * (landingCount - landing)));
      expect(resistances[landing]).toBeCloseTo(120 + 2 * wire, 9);
    }
  });

  it('is open where nothing joins the wires', () => {
    const values = { resistances: [1, 1, 1], across: [0, 0, 0], plusToCommon: [0, 0, 0.001], minusToCommon: [0, 0, 0] };
    const pair = new MeshPair({ landingCount: 3, from: [0, 1, 2], to: [1, 2, 0] }, values);
    expect(pair.resistances(values)).toEqual([Infinity, Infinity, Infinity]);
  });

  it('is shorted everywhere near a short', () => {
    const values = {
      resistances: [0, 5, 5],
      across: [Number.POSITIVE_INFINITY, 0, 1 / 120],
      plusToCommon: [0, 0, 0],
      minusToCommon: [0, 0, 0],
    };
    const pair = new MeshPair({ landingCount: 3, from: [0, 1, 2], to: [1, 2, 0] }, values);
    const [first, second, third] = pair.resistances(values);
    expect([first, second]).toEqual([0, 0]);
    expect(third).toBeCloseTo(1 / (1 / 120 + 1 / 5), 9);
  });
});
