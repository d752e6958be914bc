/** What supplies, their fuses and their cables may carry. */
import type { Cable, SupplyForm, SupplySource } from '../network.js';
import { conductorArea, gaugeArea } from '../physics/conductor.js';
import type { Limit } from './limit.js';

/** A supply that is marked class 2 and gives up to 30 V. */
const classTwoPower: Limit = {
  value: 100,
  meaning: 'the most power, in VA, of a class 2 source of up to 30 V',
  source: 'NFPA 70 chapter 9, tables 11(A) and 11(B), as quoted in trade articles; local code decides',
  strength: 'guidance',
};

/** What a source that is marked class 2 may be marked to give; undefined where it is not or no table at hand tells. */
export const classTwoLimit = ({ class: marked, voltage }: SupplySource): Limit | undefined =>
  marked === 2 && voltage <= 30 ? classTwoPower : undefined;

/** A share of the source's voltage. */
export const dropAdvice: Limit = {
  value: 0.05,
  meaning: 'the most drop that is advised between a source and its farthest load',
  source: 'from memory of an informational note in NFPA 70 (3 % on a branch, 5 % in all)',
  strength: 'from memory',
};

/**
 * The largest fuse before a copper conductor that no other rule of the code protects, thickest first. Remembered, and so
 * never more than advice.
 */
const fuseByGauge: readonly (readonly [gauge: number, amperes: number])[] = [
  [10, 30],
  [12, 20],
  [14, 15],
  [16, 10],
  [18, 7],
];

/** A metric conductor that rounds to a gauge counts as that gauge, as 0.75 mm2 does not for 18 AWG. */
const areaTolerance = 0.05;

/** The most that a conductor may carry: as its maker states it, or as is remembered for its size. */
export function conductorLimit(cable: Cable): Limit | undefined {
  if (cable.carries !== undefined) {
    return {
      value: cable.carries,
      meaning: `the most that a conductor of ${cable.name} may carry by its catalogue entry`,
      source: `the maker of cable ${cable.name}, as the catalogue repeats it`,
      strength: 'guidance',
    };
  }
  const area = conductorArea(cable);
  if (area === undefined) return undefined;
  const [, most] = fuseByGauge.find(([gauge]) => gaugeArea(gauge) * (1 - areaTolerance) <= area) ?? [];
  return most === undefined
    ? undefined
    : {
        value: most,
        meaning: 'the largest fuse before a conductor of that size',
        source: 'from memory of NFPA 70 (2017) 240.4(D): 7 A before 18 AWG, 10 A before 16 AWG, and so on',
        strength: 'from memory',
      };
}

/** Whether a load that needs one form can be fed with another. */
export const formsFit = (source: SupplyForm | undefined, load: SupplyForm | undefined): boolean =>
  source === undefined || load === undefined || source === load;
