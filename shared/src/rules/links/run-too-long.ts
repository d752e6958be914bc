/** An Ethernet link whose fixed cable is too long. */
import { channelLink, permanentLink } from '../../limits/ethernet.js';
import { metres } from '../../quantity.js';
import { linkExample } from '../other-example.js';
import type { BusRule } from '../rule.js';
import { linkText } from './link-text.js';

export const runTooLong: BusRule = {
  id: 'run-too-long',
  scope: 'bus',
  severity: 'error',
  kinds: ['ethernet'],
  check(study, report) {
    const { bus, links, lengthText } = study;
    if (bus.damaged) return;
    for (const link of links) {
      if (link.length <= permanentLink.value) continue;
      // Without cords, up to the length of a whole channel, it mostly works; nothing is left for a cord.
      const limit = channelLink.value < link.length ? channelLink : permanentLink;
      const over = lengthText(metres(link.length - permanentLink.value));
      report({
        message: `${linkText(bus, link)} is ${lengthText(link.length)} of fixed cable; ${lengthText(metres(permanentLink.value))} is ${permanentLink.meaning} (${over} over): put a switch between, or go by fibre`,
        place: link.runs[0]!.lengthPlace,
        at: bus.landings[link.to]!.name,
        severity: limit === channelLink ? 'error' : 'warning',
      });
    }
  },
  explanation: {
    what: 'An Ethernet link has more fixed cable than its standard allows: 90 m, which leaves 10 m for cords.',
    why: 'Each link is judged by itself: the pairs weaken the signal with every metre, and a receiver is made for 100 m of channel, cords included.',
    field:
      'The link falls back to a slower rate, drops out when it is warm, or loses packets under load; the link lamp may be lit all the while.',
    mend: 'Put a switch between, so that two links take its place, or use fibre for the stretch. Beyond 100 m it is an error, between 90 m and 100 m a warning.',
    bad: linkExample(['from hub.p1 : NetSwitch', '340 ft to panel1 : Panel']),
    good: linkExample(['from hub.p1 : NetSwitch', '280 ft to panel1 : Panel']),
    sources: ['ANSI/TIA-568, as reprinted by cabling and network makers: permanent link 90 m, channel 100 m'],
    since: '0.1.0',
  },
};
