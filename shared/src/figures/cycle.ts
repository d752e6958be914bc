/** How long one round of a line takes, where its protocol tells. */
import { addressSpaces, highestOf } from '../limits/address.js';
import type { Bus } from '../network.js';
import { pollCycle } from '../physics/modbus.js';
import { tokenCycle } from '../physics/mstp.js';
import type { Seconds } from '../quantity.js';
import { isRepeater, lineOf } from './line.js';
import type { BusStudy } from './study.js';

export interface Cycle {
  /** Devices that are polled, or masters that pass the token. */
  readonly devices: number;
  readonly time: Seconds;
  /** The buses that take part: those that repeaters join to this one too. */
  readonly line: readonly Bus[];
}

/** Undefined without a rate, and for kinds whose protocol is not known. */
export function cycleOf({ store, bus }: BusStudy): Cycle | undefined {
  const rate = bus.rate?.value;
  if (rate === undefined || !(0 < rate)) return undefined;
  if (bus.kind !== 'modbus-rtu' && bus.kind !== 'bacnet-mstp') return undefined;
  const line = lineOf(store, bus);
  const landings = line.flatMap((one) => one.landings);
  if (bus.kind === 'modbus-rtu') {
    // The head asks, and repeaters have nothing to say.
    const devices = landings.filter((one) => one.node && one.node.device?.role !== 'head' && !isRepeater(one)).length;
    return { devices, time: pollCycle(rate, devices), line };
  }
  const highest = highestOf(addressSpaces['bacnet-mstp']!, 'head');
  const devices = landings.filter(({ address }) => address && address.value <= highest).length;
  return { devices, time: tokenCycle(rate, devices), line };
}
