/** More drop than is advised, where no device states what it needs. */

import { largestDrop } from '../../figures/two-wire-summary.js';
import { isUnknown } from '../../known.js';
import { dropAdvice } from '../../limits/power.js';
import { formatNumber } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { soundSupply, supplyExample, withCare } from './example.js';
import { soleFeeds } from './feeds.js';

export const dropOverAdvice: BusRule = {
  id: 'drop-over-advice',
  scope: 'bus',
  severity: 'info',
  kinds: ['supply'],
  check(study, report) {
    const { supply } = study;
    for (const feed of soleFeeds(study)) {
      const drop = largestDrop(study, feed);
      if (!drop || isUnknown(supply) || drop.share <= dropAdvice.value) continue;
      report({
        severity: 'info',
        message: `${formatNumber(drop.share * 100, 1)} % of the voltage of ${feed.landing.name} is lost on the way to ${drop.landing.name}, whose least voltage the catalogue does not state; ${formatNumber(dropAdvice.value * 100)} % is the most that is advised: find out what it needs`,
        place: drop.landing.place,
        at: drop.landing.name,
      });
    }
  },
  explanation: {
    what: 'More than 5 % of a supply is lost on the way to a device whose least voltage is not stated.',
    why: 'Without knowing what the device needs, a share of the voltage is all that can be said. Codes advise 3 % on a branch and 5 % in all, for lamps and motors at mains voltage; electronics mostly stand more and sometimes less.',
    field: 'Often nothing. It is worth a look where a device restarts.',
    mend: `Write the least voltage of the device into the catalogue (\`draws 0.4 A above 19 V\`), and judge by that. ${withCare}`,
    bad: supplyExample(['300 ft to board1 : Board', '100 ft to board2 : Board'], { board: '0.4 A dc' }),
    good: supplyExample(soundSupply, { board: '0.4 A dc' }),
    sources: ['From memory of informational notes in NFPA 70 (2017) 210.19(A) and 215.2(A): 3 % and 5 %'],
    since: '0.1.0',
  },
};
