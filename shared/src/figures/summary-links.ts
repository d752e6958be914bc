/** A free-topology segment and the links of an Ethernet bus against their limits. */
import { channelLink, linkDelayLimit, linkLoop, permanentLink } from '../limits/ethernet.js';
import { apartLimit, segmentDevices, segmentForm, segmentStub, segmentWarmth } from '../limits/free-topology.js';
import type { Limit } from '../limits/limit.js';
import { formatNumber, formatOhms, formatSeconds, type Metres, metres } from '../quantity.js';
import { channelDelay, linkResistance } from './links.js';
import { type BusStudy, isUnknown, type Known } from './study.js';
import type { SummaryLine } from './summary.js';

const lengthLine = (study: BusStudy, what: string, value: Metres, limit: Limit): SummaryLine => ({
  what,
  value: study.lengthText(value),
  limit: `at most ${study.lengthText(metres(limit.value))}`,
  document: limit.source,
  strength: limit.strength,
  share: value / limit.value,
});

export function segmentLines(study: BusStudy): SummaryLine[] {
  const { bus, shape, farthest } = study;
  const lines: SummaryLine[] = [];
  const apart = apartLimit(study);
  if (apart && isUnknown(farthest)) {
    const limit = `at most ${study.lengthText(metres(apart.value))}`;
    const { source: document, strength } = apart;
    lines.push({ what: 'farthest apart', value: `unknown: ${farthest.unknown}`, limit, document, strength });
  } else if (apart && !isUnknown(farthest) && farthest) {
    lines.push(lengthLine(study, 'farthest apart', metres(farthest.length), apart));
  }
  if (segmentForm(study) === 'bus' && shape.taps.length > 0) {
    const longest = shape.taps.reduce((most, { reach }) => Math.max(most, reach), 0);
    lines.push(lengthLine(study, 'longest stub', metres(longest), segmentStub));
  }
  const devices = bus.landings.filter(({ node }) => node).length;
  lines.push(countLine('devices', devices, segmentDevices));
  if (bus.ambient) lines.push(countLine('cable temperature', bus.ambient.value, segmentWarmth, ' degC'));
  return lines;
}

const countLine = (what: string, value: number, { value: most, source, strength }: Limit, unit = ''): SummaryLine => ({
  what,
  value: `${formatNumber(value, 1)}${unit}`,
  limit: `at most ${most}${unit}`,
  document: source,
  strength,
  share: value / most,
});

/** The longest link by its fixed cable, and the longest with its cords where any states them. */
export function linkLines(study: BusStudy): SummaryLine[] {
  const { links } = study;
  if (links.length === 0) return [];
  const longest = links.reduce((most, { length }) => Math.max(most, length), 0);
  const lines = [lengthLine(study, 'longest link', metres(longest), permanentLink)];
  const channels = links.flatMap(({ length, cords }) => (cords === undefined ? [] : [length + cords]));
  if (channels.length === 0)
    lines.push({
      ...unknownLine('longest with cords', 'the cords: no run states them', channelLink),
      limit: `at most ${study.lengthText(metres(channelLink.value))}`,
    });
  else
    lines.push(
      lengthLine(study, 'longest with cords', metres(channels.reduce((most, one) => Math.max(most, one))), channelLink),
    );
  const loops = links.map((link) => linkResistance(study, link));
  lines.push(worst('largest loop', loops, (loop) => loop.nominal, formatOhms, linkLoop));
  const delays = links.map((link) => channelDelay(study, link));
  lines.push(worst('longest delay', delays, (delay) => delay, formatSeconds, linkDelayLimit));
  return lines;
}

const unknownLine = (what: string, why: string, { source, strength }: Limit) => ({
  what,
  value: `unknown: ${why}`,
  document: source,
  strength,
});

/** The largest of the links' figures beside its limit; unknown with the first reason where one is. */
function worst<T, U extends number>(
  what: string,
  figures: readonly Known<T>[],
  numberOf: (figure: T) => U,
  text: (value: U) => string,
  limit: Limit,
): SummaryLine {
  const most = `at most ${text(limit.value as U)}`;
  const unknown = figures.find(isUnknown);
  if (unknown) return { ...unknownLine(what, unknown.unknown, limit), limit: most };
  const values = figures.flatMap((figure) => (isUnknown(figure) ? [] : [numberOf(figure)]));
  const largest = values.reduce<number>((top, value) => Math.max(top, value), 0) as U;
  const { source: document, strength } = limit;
  return { what, value: text(largest), limit: most, document, strength, share: largest / limit.value };
}
