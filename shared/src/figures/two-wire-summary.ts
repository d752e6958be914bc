/** Supplies and contact loops against their limits, line by line. */
import type { Limit } from '../limits/limit.js';
import { dropAdvice } from '../limits/power.js';
import type { Device, Landing } from '../network.js';
import type { Feed } from '../physics/supply.js';
import { formatAmperes, formatNumber, formatOhms, formatVolts, formatWatts, type Volts } from '../quantity.js';
import { powerUnit } from './page/words.js';
import { type BusStudy, isUnknown, type Range } from './study.js';
import type { SummaryLine } from './summary.js';

export function twoWireSummary(study: BusStudy): SummaryLine[] {
  const { kind } = study.bus;
  if (kind === 'contact-loop') return loopLines(study);
  if (kind !== 'supply' || isUnknown(study.supply)) return [];
  return study.supply.feeds.flatMap((feed) => [...giveLine(feed), ...leastLine(study, feed), ...dropLine(study, feed)]);
}

/** A limit that the catalogue states of a device. */
const stated = (device: Device | undefined): Pick<SummaryLine, 'document' | 'strength'> => ({
  document: `device ${device?.name ?? ''}, as the catalogue has it`,
  strength: 'required',
});

function giveLine({ landing, source, given, power }: Feed): SummaryLine[] {
  const { limit, form } = source;
  if (!limit) return [];
  const drawn = 'amperes' in limit ? given : power;
  const text = (value: number) =>
    'amperes' in limit ? formatAmperes(value as never) : formatWatts(value as never, powerUnit(form));
  const most = 'amperes' in limit ? limit.amperes : limit.watts;
  return [
    {
      ...stated(landing.node?.device),
      what: `drawn from ${landing.name} at the most`,
      value: isUnknown(drawn) ? `unknown: ${drawn.unknown}` : text(drawn.high),
      limit: `at most ${text(most)}`,
      ...(!isUnknown(drawn) && { share: drawn.high / most }),
    },
  ];
}

/** The load whose least voltage leaves the least room above what it needs. */
function leastLine({ supply }: BusStudy, { loads }: Feed): SummaryLine[] {
  if (isUnknown(supply)) return [];
  let tightest: { readonly share: number; readonly line: SummaryLine } | undefined;
  for (const { landing, load } of loads) {
    const level = supply.volts[landing.index]!;
    if (load.least === undefined || isUnknown(level)) continue;
    const share = 0 < level.low ? load.least / level.low : Number.POSITIVE_INFINITY;
    if (tightest && share <= tightest.share) continue;
    const line = {
      ...stated(landing.node?.device),
      what: `least voltage at ${landing.name}`,
      value: formatVolts(level.low),
      limit: `at least ${formatVolts(load.least)}`,
      share,
    };
    tightest = { share, line };
  }
  return tightest ? [tightest.line] : [];
}

export interface Drop {
  readonly share: number;
  readonly landing: Landing;
}

/**
 * The largest share of a source's voltage that is lost, by stated values, on the way to a load whose least voltage is not
 * stated: what a device states counts before any advice.
 */
export function largestDrop({ supply }: BusStudy, { loads, source }: Feed): Drop | undefined {
  if (isUnknown(supply)) return undefined;
  let most: Drop | undefined;
  for (const { landing, load } of loads) {
    if (load.least !== undefined) continue;
    const level: Range<Volts> | { unknown: string } = supply.volts[landing.index]!;
    if (isUnknown(level)) return undefined;
    const share = (source.voltage - level.nominal) / source.voltage;
    if (!most || most.share < share) most = { share, landing };
  }
  return most;
}

function dropLine(study: BusStudy, feed: Feed): SummaryLine[] {
  const drop = largestDrop(study, feed);
  if (!drop) return [];
  return [
    {
      ...sourceOf(dropAdvice),
      what: `drop at ${drop.landing.name}`,
      value: `${formatNumber(drop.share * 100, 1)} %`,
      limit: `at most ${formatNumber(dropAdvice.value * 100)} % by advice`,
      share: drop.share / dropAdvice.value,
    },
  ];
}

function loopLines({ bus, contactLoop }: BusStudy): SummaryLine[] {
  const landing = bus.landings.find(({ port }) => port?.input);
  const input = landing?.port?.input;
  if (!input) return [];
  const lines: SummaryLine[] = [];
  const source = stated(landing?.node?.device);
  if (input.mostContacts) {
    const count = bus.landings.filter(({ port }) => port?.contact).length;
    const most = input.mostContacts.count;
    lines.push({ ...source, what: 'contacts', value: String(count), limit: `at most ${most}`, share: count / most });
  }
  if (input.mostCable) {
    const most = input.mostCable.resistance;
    lines.push({
      ...source,
      what: 'cable, out and back',
      value: isUnknown(contactLoop) ? `unknown: ${contactLoop.unknown}` : formatOhms(contactLoop.cable.nominal),
      limit: `at most ${formatOhms(most)}`,
      ...(!isUnknown(contactLoop) && { share: contactLoop.cable.nominal / most }),
    });
  }
  return lines;
}

const sourceOf = ({ source, strength }: Limit) => ({ document: source, strength });
