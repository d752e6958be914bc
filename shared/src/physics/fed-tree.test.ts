import { expect, it } from 'vitest';
import { FedTree } from './fed-tree.js';

const chain = (count: number) =>
  new FedTree({
    landingCount: count,
    source: 0,
    from: Array.from({ length: count - 1 }, (_, index) => index),
    to: Array.from({ length: count - 1 }, (_, index) => index + 1),
  });
const power = (watts: number) => ({ amperes: 0, watts });
const current = (amperes: number) => ({ amperes, watts: 0 });
const none = current(0);

it.each([
  // V = (Vs + sqrt(Vs^2 - 4 P R))/2, the root of V^2 - Vs V + P R = 0.
  [24, 6, 2],
  [24, 30, 4],
  [12, 5, 0.001],
  [24, 71.999, 2],
])('one constant power follows the quadratic: %d V, %d W over %d ohm', (source, watts, resistance) => {
  const voltage = (source + Math.sqrt(source ** 2 - 4 * watts * resistance)) / 2;
  const solution = chain(2).solve(source, [resistance], [none, power(watts)]);
  expect(solution?.volts[1]).toBeCloseTo(voltage, 6);
  expect(solution?.amperes[0]).toBeCloseTo(watts / voltage, 6);
});

it('collapses where the quadratic has no root, and only there: Vs^2/4R is the most that arrives', () => {
  // 24 V over 2 ohm: 72 W at most.
  expect(chain(2).solve(24, [2], [none, power(72.001)])).toBeUndefined();
  expect(chain(2).solve(24, [2], [none, power(71.99)])?.volts[1]).toBeCloseTo(12, 0);
  expect(chain(2).solve(24, [2], [none, current(12.001)])).toBeUndefined();
});

it('sums drops segment by segment, the current falling after each load', () => {
  // By hand: 3 A, 2 A, 1 A over 0.5 ohm each: 1.5, 1.0, 0.5 V.
  const loads = [none, current(1), current(1), current(1)];
  expect(chain(4).solve(24, [0.5, 0.5, 0.5], loads)?.volts).toEqual([
    24,
    expect.closeTo(22.5, 9),
    expect.closeTo(21.5, 9),
    expect.closeTo(21, 9),
  ]);
});

it('shares the current of a ring by its resistances, whatever landing the source is', () => {
  // 1 and 3 ohm in parallel to the load: 0.75 and 0.25 of 2 A, 1.5 V down.
  const ring = new FedTree({ landingCount: 3, source: 1, from: [1, 0, 2], to: [2, 1, 0] });
  const solution = ring.solve(24, [1, 2, 1], [none, none, current(2)]);
  expect(solution?.volts[2]).toBeCloseTo(22.5, 9);
  expect(solution?.amperes[0]).toBeCloseTo(1.5, 9);
  expect(solution?.amperes[1]).toBeCloseTo(-0.5, 9);
});

it('takes a thousand loads in a chain', () => {
  const resistances = Array.from({ length: 1000 }, () => 1e-4);
  const loads = [none, ...resistances.map(() => power(0.1))];
  const solution = chain(1001).solve(24, resistances, loads);
  const drawn = loads.reduce((sum, { watts }, landing) => sum + watts / solution!.volts[landing]!, 0);
  expect(solution?.amperes[0]).toBeCloseTo(drawn, 9);
});
