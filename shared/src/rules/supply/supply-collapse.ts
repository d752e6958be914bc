/** Loads that no voltage satisfies. */
import type { BusRule } from '../rule.js';
import { soundSupply, supplyExample, withCare } from './example.js';
import { soleFeeds } from './feeds.js';
import { everyLoadGetsEnough } from './supply-drop.js';
import { thickerFixes } from './thicker.js';

export const supplyCollapse: BusRule = {
  id: 'supply-collapse',
  scope: 'bus',
  severity: 'error',
  kinds: ['supply'],
  check(study, report) {
    for (const { landing, collapses } of soleFeeds(study)) {
      if (!collapses) continue;
      const when = collapses === 'always' ? '' : ' at the worst (source low, cable warm)';
      report({
        severity: collapses === 'always' ? 'error' : 'warning',
        message: `the devices on bus ${study.bus.name} ask for more than its cable can bring them from ${landing.name}${when}: however far the voltage falls, they would draw more; pull a much thicker cable, or feed them from nearer`,
        place: landing.place,
        at: landing.name,
        fixes: () => thickerFixes(study, everyLoadGetsEnough),
      });
    }
  },
  explanation: {
    what: 'There is no voltage at which the loads of a supply get what they ask for.',
    why: 'A device that draws a constant power P over a resistance R needs V with V^2 - Vs V + P R = 0. Where Vs^2 is less than 4 P R there is none: the voltage falls, the current rises, and the voltage falls further. A constant current over too much resistance ends the same way.',
    field: 'Devices start, drop out and start again, for as long as the supply is on.',
    mend: `Pull a much thicker cable, feed from nearer, or take a higher voltage that is converted at the device. ${withCare}`,
    bad: supplyExample(['600 ft to board1 : Board', '200 ft to board2 : Board'], {
      conductor: '24 AWG stranded',
      board: '5 W dc above 19 V below 30 V',
      thicker: true,
    }),
    good: supplyExample(soundSupply, { board: '6 W dc above 19 V below 30 V' }),
    sources: ["Ohm's and Kirchhoff's laws: V = (Vs + sqrt(Vs^2 - 4 P R))/2 for one load"],
    since: '0.1.0',
  },
};
