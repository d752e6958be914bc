/** The waveform of a pattern of bits, as a sum of shifted step responses. */
import { resampled, type Sampled } from './resample.js';

/** What a landing receives. Volts; `rise` is what a change to the driven level adds, `fall` what a change back takes. */
export interface Signal {
  /** The settled level before the rise: of 0 on RS-485, recessive on CAN. */
  readonly lower: number;
  readonly rise: Sampled;
  /** The same as `rise` where both bits are driven. */
  readonly fall: Sampled;
}

/**
 * Points from the border between the first and the second bit on, `samples` a bit, the end of the last one included.
 * The first bit is what was there long before. `raised` tells of each bit whether it is the upper level.
 */
export function waveOfBits(
  raised: readonly boolean[],
  { lower, rise, fall }: Signal,
  bitTime: number,
  samples: number,
): Float64Array {
  const step = bitTime / samples;
  const count = (raised.length - 1) * samples + 1;
  // Of what lies before the first point nothing more than a whole pattern is ever needed.
  const first = Math.max(-count, Math.floor(Math.min(rise.start, fall.start) / step));
  const up = shapeOf(rise, first, step, count);
  const down = fall === rise ? up : shapeOf(fall, first, step, count);
  const values = new Float64Array(count);
  // What has settled is kept as changes that are added up in the end.
  const settled = new Float64Array(count + 1);
  settled[0] = raised[0] ? lower + rise.end : lower;
  for (let bit = 1; bit < raised.length; bit++) {
    if (raised[bit] === raised[bit - 1]) continue;
    const sign = raised[bit] ? 1 : -1;
    const shape = raised[bit] ? up : down;
    const begin = (bit - 1) * samples + first;
    const stop = Math.max(0, Math.min(count, begin + shape.length));
    for (let point = Math.max(0, begin); point < stop; point++) values[point]! += sign * shape[point - begin]!;
    settled[stop]! += sign * (raised[bit] ? rise : fall).end;
  }
  let level = 0;
  for (let point = 0; point < count; point++) {
    level += settled[point]!;
    values[point]! += level;
  }
  return values;
}

function shapeOf(response: Sampled, first: number, step: number, most: number): Float64Array {
  const needed = Math.ceil((response.start + response.row.length * response.spacing) / step) + 1 - first;
  return resampled(response, first * step, step, Math.max(1, Math.min(most - first, needed)));
}
