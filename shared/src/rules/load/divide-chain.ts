/** A bus as a chain that can be cut, and what of the catalogue can be put between the pieces. */
import type { BusStudy } from '../../figures/study.js';
import type { Bus, Device, Landing, Port } from '../../network.js';
import { servingPorts, takesRate } from '../../ports.js';
import { type Metres, metres, metresPerFoot } from '../../quantity.js';
import { canRewire } from '../shape/straighten.js';
import { type Part, positionsOf, type RepeaterEnds, Stretches } from './divide-place.js';

/** From the repeater to the device beside it, in the same panel. Common practice, no published source. */
export const jumperOf = ({ lengthUnit }: Bus): Metres => metres(lengthUnit === 'ft' ? 3 * metresPerFoot : 1);

export const isDivisible = ({ bus, shape }: BusStudy): boolean =>
  !bus.damaged && !bus.unclear && shape.ends !== undefined && canRewire(bus, shape);

export class DivisibleChain {
  readonly study: BusStudy;
  /** Per landing its position on the trunk, or that of the landing that it hangs on. */
  readonly positions: readonly number[];
  /** The position of the head; where there is none, the first. */
  readonly head: number;
  readonly stretches: Stretches;

  constructor(study: BusStudy) {
    this.study = study;
    this.positions = positionsOf(study);
    this.head = study.head ? this.positions[study.head.index]! : 0;
    this.stretches = new Stretches(study, this.positions, this.head);
  }

  landingAt(position: number): Landing {
    return this.study.bus.landings[this.study.shape.trunk[position]!]!;
  }

  /** Where the repeater behind a position stands: beside the device there or the next, whichever is nearer to the head. */
  besideCut(cut: number): number {
    return this.head <= cut ? cut : cut + 1;
  }
}

export interface Repeater {
  readonly device: Device;
  readonly near: Port;
  readonly far: Port;
  readonly ends: RepeaterEnds;
}

/** The repeaters of the catalogue with two ports on which the bus can land as it is. */
export function repeatersFor({ bus, store }: BusStudy): Repeater[] {
  return store.choices.repeaters.flatMap((device) => {
    const node = { name: device.name, place: device.place, device };
    const [near, far] = servingPorts(node, bus).fit.filter(
      (port) => !port.reserved && (!bus.rate || takesRate(port, bus.rate.value)),
    );
    if (!near || !far) return [];
    return [{ device, near, far, ends: { near: partOf(near, jumperOf(bus)), far: partOf(far, 0) } }];
  });
}

const partOf = ({ unitLoad, needsBias, bias }: Port, length: number): Part => ({
  length,
  devices: 1,
  loads: unitLoad ?? Number.NaN,
  biases: bias?.mode === 'fixed' ? 1 : 0,
  needsBias,
});
