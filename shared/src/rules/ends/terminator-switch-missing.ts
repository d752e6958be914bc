/** `terminate switch` at a device that has no such switch. */

import { occasion } from '../../figures/occasions.js';
import { dueTermination } from '../../limits/due-terminator.js';
import { segmentForm } from '../../limits/free-topology.js';
import { isWrongPort } from '../../ports.js';
import type { BusRule } from '../rule.js';
import { exampleOf } from '../shape/example.js';
import { partsText, terminatedKinds, terminateEdit, terminateTitle, unterminateEdit } from './terminators.js';

export const terminatorSwitchMissing: BusRule = {
  id: 'terminator-switch-missing',
  scope: 'bus',
  occasions: occasion.missingSwitch,
  severity: 'error',
  kinds: terminatedKinds,
  check(study, report) {
    const { bus, census, shape } = study;
    const form = bus.kind === 'free-topology' ? segmentForm(study) : undefined;
    const terminated = census.remarked.some((landing) => landing.terminations.length > 0);
    for (const landing of census.remarked) {
      if (!landing.missingSwitch) continue;
      const { terminations, port, node } = landing;
      if (port && bus.kind && isWrongPort(port, node, bus.kind)) continue;
      const what = port
        ? `port ${port.name} of ${landing.node?.device?.name ?? landing.name}`
        : `splice ${landing.name}`;
      // With a terminator of its own, or away from the ends, the landing needs no other one; a free segment needs one.
      const needsOne =
        form === 'free'
          ? !terminated
          : terminations.length === 0 && (!shape.ends || shape.ends.includes(landing.index));
      const instead = needsOne
        ? `land ${partsText(dueTermination(bus, landing, form))} instead, and write it`
        : 'remove terminate switch';
      report({
        message: `${what} has no terminator that could be switched on, so that terminate switch terminates nothing at ${landing.name}; ${instead}`,
        place: landing.missingSwitch,
        at: landing.name,
        fixes: () => {
          const remove = {
            title: `Remove terminate switch of ${landing.name}`,
            safe: false,
            edits: [unterminateEdit(bus, landing)],
          };
          if (needsOne)
            return [
              { title: terminateTitle(bus, landing, form), safe: false, edits: [terminateEdit(bus, landing, form)] },
            ];
          return terminations.every(({ means }) => means === 'fixed') ? [remove] : [];
        },
      });
    }
  },
  explanation: {
    what: 'The text switches on a terminator that the device does not have.',
    why: 'Whoever trusts the plan leaves the end open: no resistor takes in the wave that arrives there.',
    field: 'The installer looks for a switch that does not exist, or sets one that means something else.',
    mend: 'Land a resistor across the pair instead, or give the port its terminator in the catalogue if the hardware has one.',
    bad: exampleOf(['from head : SiteHead terminate switch', '38 ft to probe1 : AirProbe address 1 terminate switch']),
    good: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to probe1 : AirProbe address 1 terminate resistor 120 ohm',
    ]),
    sources: ['The catalogue entry of the device, as the text states it'],
    since: '0.1.0',
  },
};
