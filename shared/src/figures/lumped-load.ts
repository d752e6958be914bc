/** All that a driver works into, as if it were in one point. */
import { isUnknown } from '../known.js';
import { unitLoadResistance } from '../physics/loads.js';
import { type Ohms, ohms } from '../quantity.js';
import type { BusStudy } from './study.js';

/**
 * All resistances of an RS-485 bus in parallel; 0 where a device states no load. The cable between them only adds to what
 * a driver works into, so a bus whose lumped load is enough need not be solved.
 */
export function lumpedLoad({ bus, census, unitLoads }: BusStudy): Ohms {
  // To common from each line, so two in series across the pair.
  let conductance = isUnknown(unitLoads) ? Number.POSITIVE_INFINITY : unitLoads / (2 * unitLoadResistance);
  for (const { resistance, capacitance } of census.terminators)
    if (capacitance === undefined) conductance += 1 / resistance;
  for (const { up, down } of bus.biases) conductance += 1 / (up + down);
  return ohms(1 / conductance);
}
