/** How long taps may be, by kind of bus. */
import type { Limit } from './limit.js';

const modbusGuide = 'MODBUS over Serial Line V1.02, 3.4.3';

/** One tap alone at its landing. */
const modbusTap: Limit = {
  value: 20,
  meaning: 'the most for a Modbus tap',
  source: modbusGuide,
  strength: 'required',
};

/** What the derivations of one multi-port tap share. */
export const modbusTapShare: Limit = {
  value: 40,
  meaning: 'the most that the taps of one Modbus landing may have together',
  source: modbusGuide,
  strength: 'required',
};

/** At most min(20 m, 40 m / n) for each of n taps at one landing. */
export const modbusTapLimit = (count: number): Limit =>
  count === 1
    ? modbusTap
    : {
        ...modbusTap,
        value: Math.min(modbusTap.value, modbusTapShare.value / count),
        meaning: `the most for each of ${count} Modbus taps at one landing`,
      };

/** How long a stub may be, one way, as a share of the way that the wave goes during the edge of the driver. */
export const edgeTapShare: Limit = {
  value: 0.1,
  meaning: 'the most that a stub should take of the rise time of the driver',
  source: 'data sheets of RS-485 transceivers: stub at most 0.1 x rise time x velocity, one way',
  strength: 'guidance',
};
