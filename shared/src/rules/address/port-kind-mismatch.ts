import { occasion } from '../../figures/occasions.js';
import { listed } from '../../known.js';
import { portServes } from '../../ports.js';
import { exampleFile, soundRemarks } from '../pair/example.js';
import type { BusRule } from '../rule.js';
import { portFixes, portPlaceOf, purposeOf } from './landable-ports.js';

const twoPorts = `device CaseBoard {
  port link : can
  port field : rs485 {
    terminals + "D+" - "D-" shield "SH"
    speaks modbus-rtu
    polarity required
    load 1/8
    address dial 1..99
  }
}
`;
const withTwoPorts = (port: string) =>
  exampleFile(
    `from head : SiteHead terminate switch
38 ft to caseA1.${port} : CaseBoard address 11 terminate resistor 120 ohm
${soundRemarks}`,
    undefined,
    { board: twoPorts },
  );

export const portKindMismatch: BusRule = {
  id: 'port-kind-mismatch',
  scope: 'bus',
  occasions: occasion.unusualPort,
  severity: 'error',
  kinds: 'every',
  explanation: {
    what: 'A bus is landed on a port that is made for another kind of bus, or on a device that has no port for its kind.',
    why: 'Kinds differ in levels, loads and wiring. Equal connectors do not make them fit, and some can do damage.',
    field: 'The device never answers; its transceiver or that of its neighbours may fail, and the whole bus with it.',
    mend: 'Land on the port that serves the bus, or use a device that has one.',
    bad: withTwoPorts('link'),
    good: withTwoPorts('field'),
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 4.1 (other systems use the same connectors)',
      "The device's own documentation, as the catalogue repeats it",
    ],
    since: '0.1.0',
  },
  check({ store, bus, census }, report) {
    const { kind } = bus;
    if (kind === undefined) return;
    for (const { device, port, landings } of census.outfits) {
      const possible = port ? [port] : (device?.ports ?? []);
      if (!possible.length || possible.some((one) => one.kind === undefined || portServes(one, kind))) continue;
      for (const landing of landings) {
        const { node, name } = landing;
        if (port) {
          report({
            message: `port ${port.name} of ${node?.name} is ${purposeOf(port)}, and bus ${bus.name} is ${kind}; land it on a port for ${kind}`,
            place: portPlaceOf(landing),
            related: [{ message: `port ${port.name} is described here`, place: port.place }],
            at: name,
            fixes: () => portFixes(store, bus, landing),
          });
        } else if (node && device && !landing.portPlace) {
          report({
            message: `${node.name} has no port for ${kind}; its ports are ${listed(possible.map((one) => `${one.name} (${purposeOf(one)})`))}; land another device there, or write the kind that bus ${bus.name} really is`,
            place: landing.place,
            related: [{ message: `device ${device.name} is described here`, place: device.place }],
            at: name,
          });
        }
      }
    }
  },
};
