/** Levels that receivers and drivers need. */
import { driverTestLoad, receiverThreshold } from '../physics/transceiver.js';
import type { Limit } from './limit.js';

export const idleThreshold: Limit = {
  value: receiverThreshold,
  meaning: 'the least level that every receiver reads as idle',
  source: 'TIA-485-A: receiver threshold of 200 mV either way, undefined between',
  strength: 'required',
};

export const leastDriverLoad: Limit = {
  value: driverTestLoad,
  meaning: 'the least resistance into which a driver must give 1.5 V',
  source: 'TIA-485-A: 1.5 V into 54 ohm',
  strength: 'required',
};
