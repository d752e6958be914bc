/** What a terminator may be. */
import { ohms } from '../quantity.js';
import type { Limit } from './limit.js';

/** The terminator that TIA-485-A has in mind: it tests drivers into two 120 ohm in parallel with 32 unit loads. */
export const usualTerminator = ohms(120);

/** 120 +-30 ohm is called workable for RS-485; taken as a share, so that it serves other cables too. */
export const terminatorShare: Limit = {
  value: 30 / 120,
  meaning: 'the most that a terminator should differ from the impedance of the cable',
  source: 'RS-485 tutorial of a transceiver maker: 120 ohm +-30 ohm is workable',
  strength: 'guidance',
};

/** The plain resistor that the Modbus guide names, whatever the cable (MODBUS over Serial Line V1.02, 3.4.5). */
export const modbusTerminator = ohms(150);
