/** Figures as people read them, the same in hovers, on the page of figures and in the terminal. */
import { listed } from '../../known.js';
import { segmentForm } from '../../limits/free-topology.js';
import type { SupplyForm } from '../../network.js';
import {
  type Amperes,
  formatAmperes,
  formatOhms,
  formatRate,
  formatResistor,
  formatSeconds,
  formatVolts,
  formatWatts,
  type Ohms,
  type Seconds,
  type Volts,
  type Watts,
} from '../../quantity.js';
import { type BusStudy, isUnknown, type Known, type Range } from '../study.js';

/** `61.8 ohm (60.1 to 63.4 ohm)`, one value where tolerances do not show, or why it is unknown. */
export function rangeText<T extends number>(range: Known<Range<T>>, format: (value: T) => string): string {
  if (isUnknown(range)) return `unknown: ${range.unknown}`;
  const [nominal, low, high] = [format(range.nominal), format(range.low), format(range.high)];
  if (low === high) return nominal;
  const unit = / \D+$/.exec(high)?.[0];
  return `${nominal} (${unit !== undefined && low.endsWith(unit) ? low.slice(0, -unit.length) : low} to ${high})`;
}

export const resistorText = (value: Known<Range<Ohms>>) => rangeText(value, formatResistor);
export const ohmsText = (value: Known<Range<Ohms>>) => rangeText(value, formatOhms);
export const voltsText = (value: Known<Range<Volts>>) => rangeText(value, formatVolts);
export const amperesText = (value: Known<Range<Amperes>>) => rangeText(value, formatAmperes);
export const wattsText = (value: Known<Range<Watts>>, form?: SupplyForm) =>
  rangeText(value, (power) => formatWatts(power, powerUnit(form)));
/** Apparent power where a supply alternates. */
export const powerUnit = (form: SupplyForm | undefined) => (form === 'ac' ? 'VA' : 'W');
export const secondsText = (value: Known<Seconds>) =>
  isUnknown(value) ? `unknown: ${value.unknown}` : formatSeconds(value);

/** `modbus-rtu 19200 8E1`, as far as the bus says. */
export function kindText({ bus }: BusStudy): string {
  const rate = bus.rate ? ` ${bus.rate.value < 1e5 ? bus.rate.value : formatRate(bus.rate.value)}` : '';
  const format = bus.format
    ? ` ${bus.format.value.dataBits}${bus.format.value.parity}${bus.format.value.stopBits}`
    : '';
  return `${bus.kind ?? 'unknown kind'}${rate}${format}`;
}

/** Whether it means something to be an end of this bus: not on a free segment, on links or on a supply. */
export const hasEnds = (study: BusStudy): boolean =>
  study.bus.kind !== 'ethernet' &&
  study.bus.kind !== 'supply' &&
  (study.bus.kind !== 'free-topology' || segmentForm(study) === 'bus');

/** `ends at head.field2 and caseA2`, or what the bus is instead of a plain chain. */
export function endsText(study: BusStudy): string {
  const { bus, shape } = study;
  if (bus.kind === 'ethernet') return counted(study.links.length, 'link', 'links');
  if (bus.kind === 'free-topology' && segmentForm(study) === 'free') return freeText(study);
  const names = shape.ends?.map((end) => bus.landings[end]!.name);
  if (names) return `ends at ${names.join(' and ')}`;
  if (shape.components.length > 1) return `in ${shape.components.length} separate pieces`;
  if (shape.closing.length) return 'a ring, without ends';
  if (shape.branches.length) return 'branched, without two plain ends';
  return bus.landings.length < 2 ? 'one landing, without ends' : 'without two plain ends';
}

/** A segment of free topology has no ends that would matter. */
function freeText({ bus, shape }: BusStudy): string {
  const terminated = bus.landings.filter(({ terminations }) => terminations.length > 0).map(({ name }) => name);
  const pieces = shape.components.length > 1 ? `, in ${shape.components.length} separate pieces` : '';
  return `free form, ${terminated.length > 0 ? `terminated at ${listed(terminated)}` : 'without a terminator'}${pieces}`;
}

const counted = (count: number, one: string, several: string) => `${count} ${count === 1 ? one : several}`;
