/** Lines that join the places of one landing: none lies on another, however many there are, and as many as have room. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { illegible } from '../testing/legible.js';
import { type BuiltBus, busOf } from '../testing/network.js';
import { drawStore } from './drawing.js';
import type { Part } from './scene.js';

interface Stretch {
  readonly isAcross: boolean;
  /** The height of what is across, or how far along what goes down is. */
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

function stretchesOf({ shapes }: Part): Stretch[] {
  const stretches: Stretch[] = [];
  for (const shape of shapes) {
    if (shape.shape !== 'path') continue;
    let [x, y] = [0, 0];
    for (const [, command, first, second] of shape.d.matchAll(/([MHV])(-?[\d.]+)(?: (-?[\d.]+))?/g)) {
      const [beforeX, beforeY] = [x, y];
      if (command === 'M') [x, y] = [Number(first), Number(second)];
      else if (command === 'H') x = Number(first);
      else y = Number(first);
      if (command === 'H')
        stretches.push({ isAcross: true, at: y, from: Math.min(x, beforeX), to: Math.max(x, beforeX) });
      if (command === 'V')
        stretches.push({ isAcross: false, at: x, from: Math.min(y, beforeY), to: Math.max(y, beforeY) });
    }
  }
  return stretches;
}

const liesOn = (one: Stretch, other: Stretch) =>
  one.isAcross === other.isAcross &&
  Math.abs(one.at - other.at) < 1.5 &&
  0.5 < Math.min(one.to, other.to) - Math.max(one.from, other.from);

const jointsOf = (built: BuiltBus, options: { scale?: boolean; width?: number } = {}) => {
  const scene = drawStore(built.store, [built.study], [], options);
  expect(illegible(scene)).toEqual([]);
  return scene.parts.filter(({ kind }) => kind === 'joint');
};

it('lays no joint on another', () => {
  const arm = fc.record({ from: fc.nat(11), to: fc.array(fc.nat(30), { minLength: 1, maxLength: 4 }) });
  let most = 0;
  fc.assert(
    fc.property(
      fc.array(arm, { minLength: 3, maxLength: 14 }),
      fc.boolean(),
      fc.constantFrom(640, 1120),
      (arms, scale, width) => {
        const bus = busOf('modbus-rtu').from('c0');
        for (let index = 1; index < 12; index++) bus.to(`c${index}`, 10);
        for (const { from, to } of arms) {
          bus.from(`c${from}`);
          for (const name of to) bus.to(`c${name}`, 10);
        }
        const joints = jointsOf(bus.built(), { scale, width });
        most = Math.max(most, joints.length);
        for (const [index, joint] of joints.entries()) {
          for (const other of joints.slice(index + 1)) {
            for (const one of stretchesOf(joint)) {
              expect(
                stretchesOf(other).filter((two) => liesOn(one, two)),
                `${joint.name} and ${other.name}`,
              ).toEqual([]);
            }
          }
        }
      },
    ),
    { numRuns: 200 },
  );
  expect(most).toBeGreaterThan(4);
});

it('joins five landings that share rows, and any number that do not', () => {
  const comb = busOf('modbus-rtu').from('a0');
  for (let index = 1; index < 8; index++) comb.to(`a${index}`, 10);
  for (let index = 1; index < 8; index++) comb.from(`a${index}`).to(`b${index}`, 10);
  expect(jointsOf(comb.built())).toHaveLength(5);
  const loops = busOf('modbus-rtu').from('a0');
  for (let loop = 1; loop < 9; loop++) {
    for (let index = 0; index < 9; index++) loops.to(`l${loop}n${index}`, 10);
    loops.to(`l${loop}n0`, 10);
  }
  expect(jointsOf(loops.built())).toHaveLength(8);
});
