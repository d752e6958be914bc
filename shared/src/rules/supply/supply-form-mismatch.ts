/** Direct current where a device needs alternating, or the other way round. */
import { formsFit } from '../../limits/power.js';
import type { BusRule } from '../rule.js';
import { soundSupply, supplyExample, withCare } from './example.js';
import { soleFeeds } from './feeds.js';

export const supplyFormMismatch: BusRule = {
  id: 'supply-form-mismatch',
  scope: 'bus',
  severity: 'error',
  kinds: ['supply'],
  check(study, report) {
    for (const { landing: from, source, loads } of soleFeeds(study)) {
      for (const { landing, load } of loads) {
        if (formsFit(source.form, load.form)) continue;
        report({
          message: `${landing.name} needs ${load.form} and ${from.name} supplies ${source.form}; feed it from a source of ${load.form}`,
          place: landing.place,
          at: landing.name,
          related: [{ message: 'it needs that by its catalogue entry', place: load.place }],
        });
      }
    }
  },
  explanation: {
    what: 'A device that needs direct current is on an alternating supply, or the other way round.',
    why: 'Alternating current turns the polarity of a direct-current device around a hundred times a second or more. On direct current a transformer or a coil made for alternating current heats up, since only its copper resists.',
    field: 'The device is dead at once, or hums, gets hot and dies later.',
    mend: `Feed the device from a source of its form. ${withCare}`,
    bad: supplyExample(['40 ft to board1 : Board'], { source: '24 V ac within 10 % limit 40 VA class 2' }),
    good: supplyExample(soundSupply),
    sources: ["The device's own documentation, as the catalogue repeats it"],
    since: '0.1.0',
  },
};
