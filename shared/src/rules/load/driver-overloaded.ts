import type { BusStudy } from '../../figures/study.js';
import { isUnknown } from '../../known.js';
import { leastDriverLoad } from '../../limits/level.js';
import { biasLimit, unitLoadLimit } from '../../limits/load.js';
import { unitLoadResistance } from '../../physics/loads.js';
import { formatOhms } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { loadExample } from './example.js';

/**
 * All resistances of a bus in one point. The cable between them only adds to what the head drives into, so a bus whose
 * lumped load is enough need not be solved.
 */
function lumpedLoad({ bus, unitLoads }: BusStudy): number {
  // To common from each line, so two in series across the pair.
  let conductance = isUnknown(unitLoads) ? Number.POSITIVE_INFINITY : unitLoads / (2 * unitLoadResistance);
  for (const { terminations } of bus.landings) {
    for (const { resistance, capacitance } of terminations)
      if (capacitance === undefined) conductance += 1 / resistance;
  }
  for (const { up, down } of bus.biases) conductance += 1 / (up + down);
  return 1 / conductance;
}

/**
 * What the head drives into, all resistors and loads of the bus together. A third terminator, a shape that is no chain
 * and a bias too many have their own findings, and are the cause where they are there.
 */
export const driverOverloaded: BusRule = {
  id: 'driver-overloaded',
  severity: 'warning',
  kinds: ['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485'],
  scope: 'bus',
  check: (study, report) => {
    const { bus, shape, head } = study;
    if (bus.damaged || !shape.ends || !head) return;
    const places = bus.landings.reduce((sum, { terminations }) => sum + terminations.length, 0);
    if (places > 2 || bus.biases.length > (biasLimit(bus.kind)?.value ?? bus.biases.length)) return;
    if (!isUnknown(study.unitLoads) && unitLoadLimit.value < study.unitLoads) return;
    if (leastDriverLoad.value <= lumpedLoad(study)) return;
    const load = study.meter[head.index];
    if (!load || isUnknown(load) || leastDriverLoad.value <= load.nominal) return;
    report({
      message: `the driver of ${head.name} works into ${formatOhms(load.nominal)} on bus ${bus.name}; ${leastDriverLoad.value} ohm is ${leastDriverLoad.meaning}; use larger bias resistors, terminators of the cable's impedance or fewer loads`,
      place: bus.place,
      at: head.name,
    });
  },
  explanation: {
    what: 'Terminators, bias and loads together are less than a driver must drive.',
    why: 'A driver gives its 1.5 V into 54 ohm, which is two terminators of 120 ohm with 32 unit loads. Into less it may give less, and the far receivers get what is left.',
    field: 'Levels under traffic are low at every point; the meter reads under 54 ohm across the unpowered pair.',
    mend: 'Use bias resistors of a larger value, within what the idle level allows, and terminators that match the cable.',
    bad: loadExample({ more: ['bias at head 200 ohm'] }),
    good: loadExample({ more: ['bias at head 510 ohm'] }),
    sources: ['TIA-485-A: 1.5 V into 54 ohm, as quoted in application notes'],
    since: '0.1.0',
  },
};
