import { occasion } from '../../figures/occasions.js';
import { portReserved, portServes } from '../../ports.js';
import { exampleFile, headOf, headPort, soundRemarks } from '../pair/example.js';
import type { BusRule } from '../rule.js';
import { landablePorts, portFixes, portPlaceOf } from './landable-ports.js';

const head = headOf(headPort('field'), headPort('bench', 'twin of field "for set-up at the bench only"'));
const onPort = (port: string) =>
  exampleFile(
    `from head.${port} : SiteHead terminate switch
38 ft to caseA1 : CaseBoard address 11 terminate resistor 120 ohm
${soundRemarks}`,
    undefined,
    { head },
  );

export const portWrongTwin: BusRule = {
  id: 'port-wrong-twin',
  scope: 'bus',
  occasions: occasion.unusualPort,
  severity: 'error',
  kinds: 'every',
  explanation: {
    what: 'A bus is landed on the twin of the right port: an identical connector beside it that is not meant for buses.',
    why: 'The plug fits both, and only one of the two is served in normal operation.',
    field: 'Everything measures well and nothing communicates, or only while a service tool is in use.',
    mend: 'Move the plug to the port that is meant for it, and mark that port on site.',
    bad: onPort('bench'),
    good: onPort('field'),
    sources: ["The device's own documentation, as the catalogue repeats it"],
    since: '0.1.0',
  },
  check({ store, bus, census }, report) {
    const { kind } = bus;
    if (kind === undefined) return;
    for (const { port, landings } of census.outfits) {
      // A port that does not serve the bus, or is not enabled, has that as its one finding.
      if (!port?.twinOf || !portServes(port, kind)) continue;
      const { port: right, reason, place } = port.twinOf;
      for (const landing of landings) {
        const { node, name } = landing;
        if (!node || portReserved(port, node)) continue;
        report({
          message: `port ${port.name} of ${node.name} only looks like ${right}${reason === undefined ? '' : ` (${reason})`}; land bus ${bus.name} on ${node.name}.${right}`,
          place: portPlaceOf(landing),
          related: [{ message: `port ${port.name} is called a twin here`, place }],
          at: name,
          fixes: () => {
            const free = landablePorts(store, bus, landing);
            return portFixes(
              store,
              bus,
              landing,
              free.filter((one) => one.name === right),
            );
          },
        });
      }
    }
  },
};
