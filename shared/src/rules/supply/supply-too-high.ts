/** A device that gets more voltage than it takes. */
import { formatVolts } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { soundSupply, supplyExample, withCare } from './example.js';
import { highestOf, soleFeeds } from './feeds.js';

export const supplyTooHigh: BusRule = {
  id: 'supply-too-high',
  scope: 'bus',
  severity: 'error',
  kinds: ['supply'],
  check(study, report) {
    for (const { landing: from, source, loads } of soleFeeds(study)) {
      const high = highestOf(source);
      for (const { landing, load } of loads) {
        if (load.most === undefined || high <= load.most) continue;
        const always = load.most < source.voltage;
        report({
          severity: always ? 'error' : 'warning',
          message: `${landing.name} takes ${formatVolts(load.most)} at most, and ${from.name} gives ${formatVolts(source.voltage)}${always ? '' : `, up to ${formatVolts(high)} when little is drawn`}; feed it from a source of its own voltage`,
          place: landing.place,
          at: landing.name,
          related: [{ message: 'it takes that by its catalogue entry', place: load.place }],
        });
      }
    }
  },
  explanation: {
    what: 'A source gives more voltage than a device takes.',
    why: 'The drop in the cable is no protection: with little drawn there is none, and the device gets all that the source gives.',
    field: 'The device is damaged the first time that its neighbours are off, or ages fast.',
    mend: `Feed the device from a source of its voltage, or through a converter. ${withCare}`,
    bad: supplyExample(['40 ft to board1 : Board'], { board: '0.4 A dc above 9 V below 15 V' }),
    good: supplyExample(soundSupply),
    sources: ["The device's own documentation, as the catalogue repeats it"],
    since: '0.1.0',
  },
};
