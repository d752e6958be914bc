import { occasion } from '../../figures/occasions.js';
import { listed } from '../../known.js';
import { servingPorts } from '../../ports.js';
import { exampleFile, headOf, headPort, soundRemarks } from '../pair/example.js';
import type { BusRule } from '../rule.js';
import { landablePorts, portFixes } from './landable-ports.js';

const head = headOf(headPort('field1'), headPort('field2'));
const fromLanding = (landing: string) =>
  exampleFile(
    `from ${landing} : SiteHead terminate resistor 120 ohm
38 ft to caseA1 : CaseBoard address 11 terminate resistor 120 ohm
${soundRemarks}`,
    undefined,
    { head },
  );

export const portUnstated: BusRule = {
  id: 'port-unstated',
  scope: 'bus',
  occasions: occasion.unusualPort,
  severity: 'error',
  kinds: 'every',
  explanation: {
    what: 'Several ports of the device could take the bus, and the plan does not say which.',
    why: 'The head polls each bus on the port that its program names. Nobody on site can see which one that is.',
    field: 'The installer picks one, and the whole bus is silent when it is the other.',
    mend: 'Write the port after the node, such as `head.field2`.',
    bad: fromLanding('head'),
    good: fromLanding('head.field1'),
    sources: ["The device's own documentation, as the catalogue repeats it"],
    since: '0.1.0',
  },
  check({ store, bus, census }, report) {
    if (bus.kind === undefined) return;
    for (const { device, port, landings } of census.outfits) {
      if (!device || port) continue;
      for (const landing of landings) {
        const { node, portPlace, name, place } = landing;
        if (!node || portPlace) continue;
        const { fit, poor } = servingPorts(node, bus);
        const choices = fit.length ? fit : poor;
        const [first, second] = choices;
        if (!first || !second) continue;
        report({
          message: `${node.name} has ${choices.length} ports for ${bus.kind} (${listed(choices.map((one) => one.name))}); write which, such as ${node.name}.${first.name}`,
          place,
          related: choices.map((one) => ({ message: `port ${one.name} could take the bus`, place: one.place })),
          at: name,
          fixes: () => {
            const free = landablePorts(store, bus, landing);
            // With all others taken, the one that is left follows from the rest of the text.
            return portFixes(store, bus, landing, free, fit.length > 1 && free.length === 1);
          },
        });
      }
    }
  },
};
