/** Patch cords that are too long beside the fixed cable of their link. */
import { channelLink, cordLimit, permanentLink } from '../../limits/ethernet.js';
import { metres } from '../../quantity.js';
import { linkExample } from '../other-example.js';
import type { BusRule } from '../rule.js';
import { linkText } from './link-text.js';

export const cordsTooLong: BusRule = {
  id: 'cords-too-long',
  scope: 'bus',
  severity: 'warning',
  kinds: ['ethernet'],
  check(study, report) {
    const { bus, links, lengthText } = study;
    if (bus.damaged) return;
    for (const link of links) {
      const { length, cords } = link;
      const said = link.runs.find((run) => run.cords)?.cords;
      if (cords === undefined || !said || permanentLink.value < length) continue;
      const limit = cordLimit(length, said.cable);
      const most = Math.min(limit.value, channelLink.value - length);
      if (cords <= most) continue;
      report({
        message: `${linkText(bus, link)} has ${lengthText(cords)} of cords at ${lengthText(length)} of fixed cable; ${lengthText(metres(most))} is ${limit.meaning} (${lengthText(metres(cords - most))} over): use shorter cords`,
        place: said.place,
        at: bus.landings[link.to]!.name,
      });
    }
  },
  explanation: {
    what: 'The patch cords of an Ethernet link are longer together than its fixed cable leaves room for.',
    why: 'Stranded cords weaken the signal more than solid cable does, by a fifth at 24 AWG and by half at 26 AWG. Less fixed cable leaves room for more cord, but not metre for metre.',
    field: 'The link falls back to a slower rate or loses packets after somebody took a longer cord.',
    mend: 'Use shorter cords, or cords of thicker wire. `cords 10 m of Cord24` at a run gives both cords of its link together.',
    bad: linkExample(['from hub.p1 : NetSwitch', '280 ft cords 60 ft of Cord26 to panel1 : Panel']),
    good: linkExample(['from hub.p1 : NetSwitch', '280 ft cords 32 ft of Cord26 to panel1 : Panel']),
    sources: [
      'from memory of ANSI/TIA-568: cords up to (102 m - fixed cable) / (1 + 0.2 at 24 AWG, 0.5 at 26 AWG)',
      'ANSI/TIA-568, as reprinted: channel 100 m',
    ],
    since: '0.1.0',
  },
};
