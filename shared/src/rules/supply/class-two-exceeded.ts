/** A source that is marked class 2 and gives more than class 2 allows. */
import { classTwoLimit } from '../../limits/power.js';
import { formatWatts, watts } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { soundSupply, supplyExample, withCare } from './example.js';
import { describedAt, feedsOf } from './feeds.js';

export const classTwoExceeded: BusRule = {
  id: 'class-two-exceeded',
  scope: 'bus',
  severity: 'warning',
  kinds: ['supply'],
  check(study, report) {
    for (const { landing, source } of feedsOf(study)) {
      const most = classTwoLimit(source);
      const { limit } = source;
      if (!most || !limit) continue;
      const power = watts('watts' in limit ? limit.watts : limit.amperes * source.voltage);
      if (power <= most.value) continue;
      report({
        message: `${landing.name} is said to be class 2 and to give ${formatWatts(power, 'VA')}; ${formatWatts(watts(most.value), 'VA')} is ${most.meaning}: read its marking again`,
        place: landing.place,
        at: landing.name,
        related: [describedAt(landing, source)],
      });
    }
  },
  explanation: {
    what: 'A source is marked class 2 in the catalogue and gives more than 100 VA.',
    why: 'Class 2 circuits may be wired with thin cable and without conduit, because their source cannot give enough to start a fire. The marking of the source makes the circuit class 2; neither the voltage nor the load does.',
    field: 'A 24 V supply of 5 A or 10 A for rail mounting, wired like a bell.',
    mend: `Read the marking on the source. Without it the circuit is class 1 or a power circuit, and other wiring methods apply; or divide the loads over listed class 2 sources. ${withCare}`,
    bad: supplyExample(soundSupply, { source: '24 V dc within 2 % limit 10 A class 2' }),
    good: supplyExample(soundSupply),
    sources: [
      'NFPA 70 article 725 and chapter 9, tables 11(A) and 11(B), as quoted in trade articles: 100 VA up to 30 V; local code decides',
    ],
    since: '0.1.0',
  },
};
