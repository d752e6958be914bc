/** How many devices an RS-485 driver carries, and how many places may bias the pair. */
import { type Bus, rs485Kinds } from '../network.js';
import type { Limit } from './limit.js';

/** Unit loads, the two terminators aside. */
export const unitLoadLimit: Limit = {
  value: 32,
  meaning: 'the most that an RS-485 driver must carry beside two terminators',
  source: 'TIA-485-A: 32 unit loads and a load of 54 ohm',
  strength: 'required',
};

/** What a Modbus line may carry: its bias stands for four devices. */
const modbusDevices = (biased: boolean): number => (biased ? 28 : 32);

const biasedModbusLimit: Limit = {
  value: modbusDevices(true),
  meaning: 'the most that a Modbus line carries when it is biased: 32 less 4',
  source: 'MODBUS over Serial Line V1.02, 3.4.1 and 3.4.6',
  strength: 'required',
};

/** A bus, or what one would be, as far as its bias limits its load. */
interface Biased {
  readonly kind?: Bus['kind'] | undefined;
  readonly biases: { readonly length: number };
}

/** Unit loads that a bus may have; undefined for kinds whose pair is none of RS-485. */
export function loadLimit({ kind, biases }: Biased): Limit | undefined {
  if (kind === undefined || !rs485Kinds.has(kind)) return undefined;
  return kind === 'modbus-rtu' && 0 < biases.length ? biasedModbusLimit : unitLoadLimit;
}

/** Places that may bias the pair, by kind; undefined where no document limits them. */
export function biasLimit(kind: Bus['kind']): Limit | undefined {
  switch (kind) {
    case 'modbus-rtu':
      return {
        value: 1,
        meaning: 'the most places that may bias a Modbus line',
        source: 'MODBUS over Serial Line V1.02, 3.4.6',
        strength: 'required',
      };
    case 'bacnet-mstp':
      return {
        value: 2,
        meaning: 'the most sets of network bias that an MS/TP segment should have',
        source: 'from memory of ASHRAE 135 clause 9',
        strength: 'from memory',
      };
    default:
      return undefined;
  }
}

/** Devices that a Modbus line takes without a repeater whatever their loads; bias costs four. */
export const deviceLimit = (biased: boolean): Limit => ({
  value: modbusDevices(biased),
  meaning: `the most that a Modbus line takes without a repeater${biased ? ' when it is biased' : ''}`,
  source: 'MODBUS over Serial Line V1.02, 3.4.1 and 3.4.6',
  strength: 'required',
});

/** What the resistors of a bias may be; undefined where no document says. */
export const biasResistors = (
  kind: Bus['kind'],
): { readonly low: number; readonly high: number; readonly source: string } | undefined =>
  kind === 'modbus-rtu' ? { low: 450, high: 650, source: 'MODBUS over Serial Line V1.02, 3.4.6' } : undefined;
