/** A CAN bus against what its rate, its conductors and its drivers allow. */
import { canWireLimit, leastCanLoad } from '../limits/can.js';
import { limitedLength } from '../limits/length.js';
import { propagation, samplePointOf, wireReach } from '../physics/can.js';
import { formatOhms, formatSeconds, formatSignificant, type Metres, ohms, seconds } from '../quantity.js';
import { type BusStudy, isUnknown } from './study.js';
import type { SummaryLine } from './summary.js';

export const canLines = (study: BusStudy): SummaryLine[] =>
  [...stubLines(study), propagationLine(study), reachLine(study), wireLine(study), loadLine(study)].flatMap(
    (line) => line ?? [],
  );

/** The longest stub and all of them; nothing while the rate is unsaid or the guide is silent. */
function stubLines({ bus, shape, canGuide, lengthText }: BusStudy): (SummaryLine | undefined)[] {
  const rate = bus.rate?.value;
  if (rate === undefined || shape.taps.length === 0) return [];
  const own = shape.taps.filter(({ at }) => !shape.onTap.has(at));
  const longest = own.reduce((most, { reach }) => Math.max(most, reach), 0) as Metres;
  const total = own.reduce((sum, tap) => sum + tap.total, 0) as Metres;
  const line = (what: string, value: Metres, limit: Metres | undefined): SummaryLine | undefined =>
    limit === undefined
      ? undefined
      : {
          what,
          value: lengthText(value),
          limit: `at most ${lengthText(limit)}`,
          document: canGuide.source,
          strength: 'guidance',
          share: value / limit,
        };
  return [line('longest stub', longest, canGuide.stub(rate)), line('all stubs', total, canGuide.stubSum(rate))];
}

function propagationLine(study: BusStudy): SummaryLine | undefined {
  const found = propagation(study);
  const { bus, bitTime } = study;
  if (isUnknown(bitTime) || (!isUnknown(found) && !found)) return undefined;
  const budget = seconds(samplePointOf(bus) * bitTime);
  return {
    what: 'way there and back',
    value: isUnknown(found) ? `unknown: ${found.unknown}` : formatSeconds(found!.time),
    limit: `at most ${formatSeconds(budget)}`,
    document: 'Microchip DS70005340A, equations 5 to 9: before the sample point',
    strength: 'required',
    ...(!isUnknown(found) && { share: found!.time / budget }),
  };
}

function reachLine(study: BusStudy): SummaryLine | undefined {
  const length = limitedLength(study);
  const reach = wireReach(study);
  if (length === 0) return undefined;
  return {
    what: 'length for its conductors',
    value: study.lengthText(length),
    limit: isUnknown(reach) ? `unknown: ${reach.unknown}` : `at most ${study.lengthText(reach)}`,
    document: 'Philips AN96116, equation 11',
    strength: 'guidance',
    ...(!isUnknown(reach) && { share: length / reach }),
  };
}

function wireLine(study: BusStudy): SummaryLine | undefined {
  const { loopResistance } = study;
  const length = limitedLength(study);
  const limit = canWireLimit(length);
  if (!limit || length === 0 || isUnknown(loopResistance)) return undefined;
  const perMetre = loopResistance.nominal / 2 / length;
  return {
    what: 'one conductor',
    value: `${formatSignificant(perMetre * 1000)} ohm/km`,
    limit: `at most ${formatSignificant(limit.value * 1000)} ohm/km`,
    document: limit.source,
    strength: limit.strength,
    share: perMetre / limit.value,
  };
}

/** What a driver at an end works into. */
function loadLine({ bus, shape, meter }: BusStudy): SummaryLine | undefined {
  const load = shape.ends && meter[shape.ends[0]];
  if (!load) return undefined;
  return {
    what: `driver at ${bus.landings[shape.ends[0]]!.name}`,
    value: isUnknown(load) ? `unknown: ${load.unknown}` : formatOhms(load.nominal),
    limit: `at least ${formatOhms(ohms(leastCanLoad.value))}`,
    document: leastCanLoad.source,
    strength: leastCanLoad.strength,
    ...(!isUnknown(load) && { share: leastCanLoad.value / load.nominal }),
  };
}
