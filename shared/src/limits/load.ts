/** How many devices an RS-485 driver carries, and how many places may bias the pair. */
import type { Bus } from '../network.js';
import type { Limit } from './limit.js';

/** Unit loads, the two terminators aside. */
export const unitLoadLimit: Limit = {
  value: 32,
  meaning: 'the most that an RS-485 driver must carry beside two terminators',
  source: 'TIA-485-A: 32 unit loads and a load of 54 ohm',
  strength: 'required',
};

/** Places that may bias the pair, by kind; undefined where no document limits them. */
export function biasLimit(kind: Bus['kind']): Limit | undefined {
  switch (kind) {
    case 'modbus-rtu':
      return {
        value: 1,
        meaning: 'the number of places that may polarize a Modbus line',
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
