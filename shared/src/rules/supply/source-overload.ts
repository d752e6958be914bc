/** Loads that ask for more than a source gives. */
import { amountText } from '../../figures/page/two-wire-views.js';
import { isUnknown } from '../../known.js';
import type { BusRule } from '../rule.js';
import { soundSupply, supplyExample, withCare } from './example.js';
import { describedAt, soleFeeds } from './feeds.js';

export const sourceOverload: BusRule = {
  id: 'source-overload',
  scope: 'bus',
  severity: 'error',
  kinds: ['supply'],
  check(study, report) {
    for (const { landing, source, given, power } of soleFeeds(study)) {
      const { limit, form } = source;
      if (!limit || isUnknown(given) || isUnknown(power)) continue;
      const drawn = 'amperes' in limit ? given : power;
      const most = 'amperes' in limit ? limit.amperes : limit.watts;
      const text = (value: number) =>
        amountText('amperes' in limit ? { amperes: value as never } : { watts: value as never }, form);
      const always = most < drawn.nominal;
      if (!always && drawn.high <= most) continue;
      report({
        severity: always ? 'error' : 'warning',
        message: always
          ? `the devices on bus ${study.bus.name} and its cable take ${text(drawn.nominal)} of ${landing.name}, which gives ${text(most)} at most (${text(drawn.nominal - most)} over); move loads to another source`
          : `the devices on bus ${study.bus.name} and its cable take ${text(drawn.nominal)} of ${landing.name}, and ${text(drawn.high)} at the worst; it gives ${text(most)} at most: move loads to another source`,
        place: landing.place,
        at: landing.name,
        related: [describedAt(landing, source)],
      });
    }
  },
  explanation: {
    what: 'The loads of a supply and the loss in its cable take more than its source gives.',
    why: 'Beyond its limit a source lowers its voltage, switches off or burns. Loads that need a constant power draw more current as the voltage falls, which makes it worse. Inrush comes on top of it: what a load takes as it is switched on is not in the catalogue and not counted here.',
    field: 'All devices restart together, most often when a heater, a valve or a horn starts. The transformer is hot.',
    mend: `Divide the loads over more sources, with some room for what is added later. Do not fit a larger source on the same wire without looking at the wire. ${withCare}`,
    bad: supplyExample(soundSupply, { source: '24 V dc within 2 % limit 0.7 A class 2' }),
    good: supplyExample(soundSupply),
    sources: ["The source's own documentation, as the catalogue repeats it", "Kirchhoff's laws: circuit theory"],
    since: '0.1.0',
  },
};
