import { occasion } from '../../figures/occasions.js';
import type { BusStudy } from '../../figures/study.js';
import { permanentLink } from '../../limits/ethernet.js';
import { lengthLimit, limitedLength } from '../../limits/length.js';
import { metres } from '../../quantity.js';
import { linkText } from '../links/link-text.js';
import type { BusRule, Report } from '../rule.js';
import { loadExample } from './example.js';

/** Within this share of a limit a change on site is likely to break it. Common practice, no published source. */
const closeShare = 0.1;

/** How near a bus is to the length limit that it still keeps. */
export const toleranceClose: BusRule = {
  id: 'tolerance-close',
  occasions: occasion.long,
  severity: 'info',
  kinds: ['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485', 'can', 'free-topology', 'ethernet'],
  scope: 'bus',
  check: (study, report) => {
    if (study.bus.kind === 'ethernet') {
      checkLinks(study, report);
      return;
    }
    const limit = lengthLimit(study);
    const length = limitedLength(study);
    if (!limit || limit.value < length || length < limit.value * (1 - closeShare)) return;
    const left = study.lengthText(metres(limit.value - length));
    report({
      message: `bus ${study.bus.name} runs ${study.lengthText(length)} of ${study.lengthText(metres(limit.value))}, ${limit.meaning}; ${left} are left for changes on site`,
      place: study.bus.place,
    });
  },
  explanation: {
    what: 'A bus, or a link of Ethernet, comes within 10 % of its length limit.',
    why: 'Planned lengths grow when cable is pulled: around a beam, down to a floor box, into a panel.',
    field: 'Nothing yet; the next case that is added may be the one too many.',
    mend: 'Leave slack in the plan, or note the built lengths as they are pulled.',
    bad: loadExample({ runs: ['2100 ft', '1700 ft'] }),
    good: loadExample(),
    sources: ['common practice, no published source'],
    since: '0.1.0',
  },
};

function checkLinks({ bus, links, lengthText }: BusStudy, report: (finding: Report) => void): void {
  const { value, meaning } = permanentLink;
  for (const link of links) {
    if (value < link.length || link.length < value * (1 - closeShare)) continue;
    const left = lengthText(metres(value - link.length));
    report({
      message: `${linkText(bus, link)} has ${lengthText(link.length)} of ${lengthText(metres(value))}, ${meaning}; ${left} are left for changes on site`,
      place: link.runs[0]!.lengthPlace,
      at: bus.landings[link.to]!.name,
    });
  }
}
