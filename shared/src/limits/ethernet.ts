/** Lengths of Ethernet links over category cable, and the category that a rate asks for. */
import type { CableClass } from '../catalogue.js';
import type { Cable } from '../network.js';
import { type Metres, metres } from '../quantity.js';
import { gaugeOf } from './cable-class.js';
import type { Limit } from './limit.js';

export const permanentLink: Limit = {
  value: 90,
  meaning: 'the most for the fixed cable of a link',
  source: 'ANSI/TIA-568, as reprinted: permanent link at most 90 m',
  strength: 'guidance',
};

export const channelLink: Limit = {
  value: 100,
  meaning: 'the most for a link with its cords',
  source: 'ANSI/TIA-568, as reprinted: channel at most 100 m',
  strength: 'guidance',
};

/** Out and back through one pair of the fixed cable. */
export const linkLoop: Limit = {
  value: 21,
  meaning: 'the most that a pair of the fixed cable should resist out and back',
  source: 'from memory of ANSI/TIA-568: loop resistance of a permanent link at most 21 ohm',
  strength: 'from memory',
};

/** Of a whole channel at 10 MHz. */
export const linkDelayLimit: Limit = {
  value: 555e-9,
  meaning: 'the most that a signal should take through a link',
  source: 'ANSI/TIA-568, as told in training slides: propagation delay of a channel at most 555 ns at 10 MHz',
  strength: 'guidance',
};

/** A stranded cord attenuates by so much more than solid cable: 20 % at 24 AWG, 50 % where it is thinner. */
const cordExcess = (cord: Cable | undefined): number => ((gaugeOf(cord) ?? 24) <= 24 ? 0.2 : 0.5);

/**
 * What all cords of a link may have together beside its fixed cable: C = (102 - H) / (1 + D), from memory of
 * ANSI/TIA-568; 0 or more. A cord of unsaid gauge counts as 24 AWG.
 */
export function cordLimit(fixed: Metres, cord: Cable | undefined): Limit {
  return {
    value: metres(Math.max(0, (102 - fixed) / (1 + cordExcess(cord)))),
    meaning: 'the most for the cords of a link with so much fixed cable',
    source: 'from memory of ANSI/TIA-568: cords up to (102 m - fixed cable) / (1 + 0.2 at 24 AWG, 0.5 at 26 AWG)',
    strength: 'from memory',
  };
}

/** Rates that ports come with, in bit/s. */
export const ethernetRates: readonly number[] = [10e6, 100e6, 1e9, 2.5e9, 5e9, 10e9];

interface Demand {
  readonly upTo: number;
  readonly classes: readonly CableClass[];
  readonly text: string;
}

const fromCategory5: readonly CableClass[] = ['category-5', 'category-5e', 'category-6', 'category-6a'];
/** From memory of IEEE 802.3, clauses on twisted pair. */
const demands: readonly Demand[] = [
  { upTo: 1e9, classes: fromCategory5, text: 'category 5 or better' },
  { upTo: 5e9, classes: fromCategory5.slice(1), text: 'category 5e or better' },
  { upTo: Number.POSITIVE_INFINITY, classes: fromCategory5.slice(2), text: 'category 6 or better' },
];

/** What a rate asks of a cable that states its class, as `category 5e or better`; undefined where it will do. */
export function categoryWanted({ class: stated }: Cable, rate: number | undefined): string | undefined {
  const demand = demands.find(({ upTo }) => (rate ?? 0) <= upTo);
  return stated === undefined || !demand || demand.classes.includes(stated) ? undefined : demand.text;
}
