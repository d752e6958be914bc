/** How long a bus and its trunk are, and what the trunk resists. */
import { isUnknown, type Known, type Range } from '../known.js';
import type { Run } from '../network.js';
import { type Metres, metres, type Ohms } from '../quantity.js';
import type { BusStudy } from './study.js';

const isTrunk = ({ shape }: BusStudy, run: Run): boolean => !run.spare && !run.tap && !shape.onTap.has(run.from);

/** From end to end; 0 for what is no chain. */
export function trunkLengthOf(study: BusStudy): Metres {
  if (!study.shape.ends) return metres(0);
  let length = 0;
  for (const run of study.bus.runs) if (isTrunk(study, run)) length += run.length;
  return metres(length);
}

/** Out and back between the two ends, terminators aside. */
export function loopResistanceOf(study: BusStudy): Known<Range<Ohms>> {
  if (!study.shape.ends) return { unknown: 'the two ends of the bus: it is no single chain' };
  return outAndBack(
    study,
    study.bus.runs.filter((run) => isTrunk(study, run)),
  );
}

/** Both conductors of these runs, one after the other. */
export function outAndBack(study: BusStudy, runs: readonly Run[]): Known<Range<Ohms>> {
  let [nominal, low, high] = [0, 0, 0];
  for (const run of runs) {
    const resistance = study.runResistance(run);
    if (isUnknown(resistance)) return resistance;
    nominal += 2 * resistance.nominal;
    low += 2 * resistance.low;
    high += 2 * resistance.high;
  }
  return { nominal, low, high } as Range<Ohms>;
}
