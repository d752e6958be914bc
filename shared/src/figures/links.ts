/**
 * The links of an Ethernet bus: each run is one, and runs that meet at a splice with no third one (a coupler, a panel)
 * are parts of the same.
 */
import { isUnknown, type Known, type Range } from '../known.js';
import type { Bus, LandingIndex, Run } from '../network.js';
import { cableVelocity, travelTime } from '../physics/delay.js';
import { type Metres, metres, type Ohms, type Seconds, seconds } from '../quantity.js';
import type { BusStudy } from './study.js';
import { outAndBack } from './trunk.js';
import { across, joins } from './walk.js';

export interface Link {
  /** Its runs, from one end to the other. */
  readonly runs: readonly Run[];
  readonly from: LandingIndex;
  readonly to: LandingIndex;
  /** Fixed cable. */
  readonly length: Metres;
  /** All cords together; undefined where none of its runs says. */
  readonly cords?: Metres;
}

export function linksOf(bus: Bus): Link[] {
  const taken = new Uint8Array(bus.runs.length);
  const links: Link[] = [];
  for (const run of bus.runs) {
    if (!joins(run) || taken[run.index]) continue;
    taken[run.index] = 1;
    const back = follow(bus, run, run.from, taken);
    const on = follow(bus, run, run.to!, taken);
    const runs = [...back.runs.reverse(), run, ...on.runs];
    const cords = runs.flatMap((one) => one.cords?.length ?? []);
    links.push({
      runs,
      from: back.end,
      to: on.end,
      length: metres(runs.reduce((sum, { length }) => sum + length, 0)),
      ...(cords.length > 0 && { cords: metres(cords.reduce((sum: number, length) => sum + length, 0)) }),
    });
  }
  return links;
}

/** On through splices that join just two runs. */
function follow(bus: Bus, first: Run, start: LandingIndex, taken: Uint8Array): { runs: Run[]; end: LandingIndex } {
  const runs: Run[] = [];
  let end = start;
  for (let last = first; ; ) {
    const { splice, runs: meeting } = bus.landings[end]!;
    const next = meeting.find((index) => index !== last.index);
    if (splice === undefined || meeting.length !== 2 || next === undefined || taken[next]) return { runs, end };
    const run = bus.runs[next]!;
    if (!joins(run)) return { runs, end };
    taken[next] = 1;
    runs.push(run);
    end = across(run, end);
    last = run;
  }
}

/** Out and back through one pair of the fixed cable of a link, its cords aside. */
export const linkResistance = (study: BusStudy, link: Link): Known<Range<Ohms>> => outAndBack(study, link.runs);

/** What the wave takes through the fixed cable of a link, its cords aside. */
export function linkDelay(study: BusStudy, link: Link): Known<Seconds> {
  let total = 0;
  for (const run of link.runs) {
    const delay = study.runDelay(run);
    if (isUnknown(delay)) return delay;
    total += delay;
  }
  return seconds(total);
}

/** The same through the cords too, where they are stated: the whole channel. Cords of unknown velocity count as the cable. */
export function channelDelay(study: BusStudy, link: Link): Known<Seconds> {
  const fixed = linkDelay(study, link);
  if (isUnknown(fixed)) return fixed;
  let total: number = fixed;
  for (const { cable, cords } of link.runs) {
    if (!cords) continue;
    const [own, beside] = [cords.cable, cable].map((one) => one && cableVelocity(one));
    const velocity = own === undefined || isUnknown(own) ? beside : own;
    if (velocity !== undefined && !isUnknown(velocity)) total += travelTime(cords.length, velocity);
  }
  return seconds(total);
}
