/** An Ethernet link that nothing is plugged into. */

import { linkExample } from '../other-example.js';
import type { BusRule } from '../rule.js';
import { linkText } from './link-text.js';

export const linkWithoutDevice: BusRule = {
  id: 'link-without-device',
  scope: 'bus',
  severity: 'warning',
  kinds: ['ethernet'],
  check({ bus, links }, report) {
    if (bus.damaged) return;
    for (const link of links) {
      const open = [link.from, link.to]
        .map((index) => bus.landings[index]!)
        .find(({ splice, runs }) => splice !== undefined && runs.length === 1);
      if (!open) continue;
      report({
        message: `${linkText(bus, link)} ends at ${open.name}, where nothing is plugged in; a link joins two devices: write the run that goes on from there, or the device`,
        place: open.place,
        at: open.name,
      });
    }
  },
  explanation: {
    what: 'An Ethernet link ends at a splice (an outlet, a panel) from which no cable goes on to a device.',
    why: 'A link is two ports that talk to each other; a cable with a device at one end does nothing.',
    field: 'The outlet is labelled and dead, or the cord that belongs there was never ordered.',
    mend: 'Write the run from the outlet to its device. A spare link is marked `spare`.',
    bad: linkExample(['from hub.p1 : NetSwitch', '120 ft to splice outlet1']),
    good: linkExample(['from hub.p1 : NetSwitch', '120 ft to splice outlet1', '10 ft to panel1 : Panel']),
    sources: ['Common practice, no published source'],
    since: '0.1.0',
  },
};
