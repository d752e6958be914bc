/** How much harm a fault does to the signal, and what mending it gives, as a line beside a finding. */
import { type BusMargin, healthyMargin, isHealthy } from '../figures/bus-margin.js';
import { type Signal, shortTap } from '../figures/signal.js';
import type { BusStudy } from '../figures/study.js';
import type { RelatedPlace } from '../finding.js';
import { isUnknown } from '../known.js';
import type { LandingIndex } from '../network.js';
import { formatRate, formatVolts, volts } from '../quantity.js';

/** What a finding is about: the terminators of a landing, the taps, the rate, or what the driver has to feed. */
export type Cause = { readonly terminatorsOf: LandingIndex } | 'taps' | 'rate' | 'load';

/** A line at the landing that has least left; none where the signal cannot be told, or not yet. */
export function signalEffect(study: BusStudy, cause: Cause): readonly RelatedPlace[] {
  const { signal, bus } = study;
  if (isUnknown(signal)) return [];
  const { now, cure } = effectOf(study, signal, cause);
  const left = leftText(study, now);
  const rate = bus.rate ? formatRate(bus.rate.value) : 'this rate';
  const healthy = formatVolts(healthyMargin);
  const message = isHealthy(now)
    ? `simulated: ${left}, and ${healthy} is enough: it is not felt at ${rate}`
    : `simulated: ${left}, and ${healthy} is wanted${cure ? `; ${cure}` : ''}`;
  return [{ message, place: bus.landings[now.landing]!.place }];
}

/** What lies farther beyond is no level any more: bits that add up on a bus that rings. */
const mostShort = volts(2);

/** `at worst 350 mV beyond the receiver's threshold is left here while head drives`. */
export function leftText({ bus }: BusStudy, { margin, driver }: BusMargin, where = 'here'): string {
  const drives = `while ${bus.landings[driver]!.name} drives`;
  if (0 <= margin) return `at worst ${formatVolts(margin)} beyond the receiver's threshold is left ${where} ${drives}`;
  const short = -margin < mostShort ? formatVolts(volts(-margin)) : `more than ${formatVolts(mostShort)}`;
  return `at worst the level ${where} is ${short} short of the receiver's threshold ${drives}`;
}

/** What is left with the fault, and what there would be without it. */
function effectOf(study: BusStudy, signal: Signal, cause: Cause): { readonly now: BusMargin; readonly cure?: string } {
  const { asWritten, righted, withoutTaps, alone, slower } = signal;
  if (typeof cause === 'object') {
    return {
      now: isHealthy(asWritten) ? asWritten : (alone.get(cause.terminatorsOf) ?? asWritten),
      cure: gives('with both ends terminated as is due it', righted),
    };
  }
  const now = righted;
  if (cause === 'taps') {
    return { now, cure: gives(`with every tap shortened to ${study.lengthText(shortTap)} it`, withoutTaps) };
  }
  if (!slower) return { now };
  return { now, cure: gives(`at ${formatRate(slower.rate)} it`, slower.margin) };
}

const gives = (cured: string, margin: BusMargin): string =>
  `${cured} would be ${formatVolts(margin.margin)}${isHealthy(margin) ? '' : ', still too little'}`;
