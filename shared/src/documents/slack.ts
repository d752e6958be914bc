/** How much longer than planned a run is cut, and how many reels that takes. */
import { formatNumber, type LengthUnit, type Metres, metres, metresPerFoot, toSi } from '../quantity.js';
import { type LengthUnits, lengthsText } from './cells.js';

/** A share of the planned length, and a length at each end for the panel, the loop and a second try. */
export interface Slack {
  readonly share: number;
  readonly perEnd: Metres;
}

/** 5 % and 3 ft at each end. Common practice, no published source. */
export const usualSlack: Slack = { share: 0.05, perEnd: metres(3 * metresPerFoot) };

/** A reel of 1,000 ft, as cable is commonly put up; no published source. */
export const usualReel: Metres = metres(1000 * metresPerFoot);

/** Pieces are cut to whole steps of a tape: feet, or half metres. */
const step = { ft: metresPerFoot, m: 0.5 } as const satisfies Record<LengthUnit, number>;

/** `5 %`, `3 ft` or `5 % + 3 ft`; undefined for any other text, more than twice the run, or more than 100 m an end. */
export function readSlack(written: string): Slack | undefined {
  let share: number | undefined;
  let perEnd: number | undefined;
  for (const part of written.split('+')) {
    const [, digits = '', unit = ''] = /^\s*(\d+(?:\.\d+)?)\s*([a-z]+|%)\s*$/.exec(part) ?? [];
    if (unit === '%' && share === undefined) share = Number(digits) / 100;
    else if (isLengthUnit(unit) && perEnd === undefined) perEnd = toSi(Number(digits), unit);
    else return undefined;
  }
  if (2 < (share ?? 0) || 100 < (perEnd ?? 0)) return undefined;
  return { share: share ?? 0, perEnd: metres(perEnd ?? 0) };
}

/** A length such as `1000 ft`, more than nothing; undefined for any other text. */
export function readLength(written: string): Metres | undefined {
  const [, digits = '', unit = ''] = /^\s*(\d+(?:\.\d+)?)\s*([a-z]+)\s*$/.exec(written) ?? [];
  const length = isLengthUnit(unit) ? toSi(Number(digits), unit) : undefined;
  return length !== undefined && 0 < length && length <= 1e6 ? metres(length) : undefined;
}

const isLengthUnit = (unit: string) => ['ft', 'in', 'yd', 'm', 'cm'].includes(unit);

/** What is cut for a run: planned and slack, rounded up to a whole foot or half a metre. */
export function cutLength(planned: Metres, { share, perEnd }: Slack, unit: LengthUnit): Metres {
  const exact = planned * (1 + share) + 2 * perEnd;
  // A sum that is a whole step but for the last binary digits must not be rounded up to the next.
  return metres(Math.ceil(exact / step[unit] - 1e-6) * step[unit]);
}

/** The rule in a sentence's words: `planned + 5 % + 3 ft at each end, rounded up to the whole foot`. */
export function slackText({ share, perEnd }: Slack, units: LengthUnits): string {
  const parts = [
    ...(share === 0 ? [] : [`${formatNumber(share * 100, 1)} %`]),
    ...(perEnd === 0 ? [] : [`${lengthsText(perEnd, units)} at each end`]),
  ];
  const rounding = units[0] === 'ft' ? 'the whole foot' : 'half a metre';
  return `${['planned length', ...parts].join(' + ')}, rounded up to ${rounding}`;
}

/**
 * Reels that pieces can be cut from without a joint, the longest first and each from the first reel that still has
 * enough (first fit decreasing); undefined when a piece is longer than a reel.
 */
export function reelsFor(pieces: readonly Metres[], reel: Metres): number | undefined {
  const left: number[] = [];
  for (const piece of [...pieces].sort((one, other) => other - one)) {
    if (reel < piece) return undefined;
    const at = left.findIndex((rest) => piece <= rest);
    if (at < 0) left.push(reel - piece);
    else left[at]! -= piece;
  }
  return left.length;
}
