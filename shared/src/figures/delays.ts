/** What the wave takes to each landing, from where its distance counts. */
import { isUnknown, type Known } from '../known.js';
import { type Seconds, seconds } from '../quantity.js';
import type { BusStudy } from './study.js';
import { across } from './walk.js';

/** Along the shortest way; unknown on islands, and behind cable whose velocity is. */
export function delaysOf(study: BusStudy): Known<Seconds>[] {
  const { bus, shape } = study;
  const delays = new Array<Known<Seconds>>(bus.landings.length);
  for (const landing of shape.walk) {
    const arrival = shape.reachedBy[landing];
    if (shape.distance[landing] === undefined) {
      delays[landing] = { unknown: `the way from ${bus.landings[0]!.name}: nothing joins them` };
    } else if (arrival === undefined) delays[landing] = seconds(0);
    else {
      const run = bus.runs[arrival]!;
      const before = delays[across(run, landing)]!;
      const through = isUnknown(before) ? before : study.runDelay(run);
      delays[landing] = isUnknown(before) || isUnknown(through) ? through : seconds(before + through);
    }
  }
  return delays;
}
