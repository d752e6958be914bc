/** The rates that buses are usually set to: what is offered, suggested and advised. */
import type { Bus, BusKind } from '../network.js';
import { takesRate } from '../ports.js';
import { type BitsPerSecond, bitsPerSecond } from '../quantity.js';
import { canRates } from './can.js';

/** Rates that asynchronous devices have in common. Common practice, no published source. */
const serial = [921_600, 460_800, 230_400, 115_200, 76_800, 57_600, 38_400, 19_200, 9600, 4800, 2400, 1200];
/** 9600 and 19,200 must exist, others up to 115,200 may (MODBUS over Serial Line V1.02, 3.2). */
const modbus = serial.filter((rate) => rate <= 115_200);
/** ANSI/ASHRAE 135 clause 9, from memory: 9600 and 38,400 must exist. */
const mstp = [115_200, 76_800, 57_600, 38_400, 19_200, 9600];
/** Halves of 1.25 Mbit/s, as the transceivers' clock is divided: from memory of their data books. */
const peer = Array.from({ length: 11 }, (_, halving) => 1_250_000 / 2 ** halving);

const byKind: Readonly<Partial<Record<BusKind, readonly number[]>>> = {
  rs485: serial,
  'modbus-rtu': modbus,
  'bacnet-mstp': mstp,
  'peer-485': peer,
  can: canRates,
};

/** The usual rates of a kind, the fastest first; none for kinds that leave no choice. */
export const usualRates = (kind: BusKind | undefined): readonly BitsPerSecond[] =>
  ((kind && byKind[kind]) ?? []).map(bitsPerSecond);

/** The rate that a kind's document prefers; undefined where none does. */
export function preferredRate(kind: BusKind): BitsPerSecond | undefined {
  if (kind === 'modbus-rtu') return bitsPerSecond(19_200);
  return kind === 'bacnet-mstp' ? bitsPerSecond(38_400) : undefined;
}

/** Usual rates that every port of the bus can be set to, as far as the catalogue tells; the fastest first. */
export const settableRates = ({ kind, landings }: Pick<Bus, 'kind' | 'landings'>): readonly BitsPerSecond[] =>
  usualRates(kind).filter((rate) => landings.every(({ port }) => !port || takesRate(port, rate)));

/** Those of {@link settableRates} that are slower than the bus is set to; none for a bus without a rate. */
export function slowerRates(bus: Pick<Bus, 'kind' | 'landings' | 'rate'>): readonly BitsPerSecond[] {
  const present = bus.rate?.value ?? 0;
  return settableRates(bus).filter((rate) => rate < present);
}
