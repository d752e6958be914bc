/** What a cable counts as where a limit is given by class or gauge. */
import type { Cable } from '../network.js';
import { gaugeOfArea } from '../physics/conductor.js';

/** As stated, else that of its area, which is no whole number in general; undefined where the cable says neither. */
export const gaugeOf = (cable: Cable | undefined): number | undefined =>
  cable?.gauge ?? (cable?.area === undefined ? undefined : gaugeOfArea(cable.area));

/** Whether a cable is of a category of ANSI/TIA-568: as stated, else four pairs of 23 or 24 AWG at 100 ohm. */
export const isCategoryCable = (cable: Cable | undefined): boolean =>
  cable?.class === undefined
    ? cable?.pairs === 4 && cable.impedance === 100 && (cable.gauge === 23 || cable.gauge === 24)
    : cable.class.startsWith('category');
