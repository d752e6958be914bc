import { occasion } from '../../figures/occasions.js';
import type { Fix } from '../../finding.js';
import { listed } from '../../known.js';
import type { Bus, Landing, Port } from '../../network.js';
import { portReserved as isReserved, portServes } from '../../ports.js';
import { exampleFile, headOf, headPort, soundRemarks } from '../pair/example.js';
import type { BusRule } from '../rule.js';
import { portFixes, portPlaceOf } from './landable-ports.js';

const head = headOf(
  ['revision A, B'],
  headPort('field'),
  headPort('field2', 'reserved in A "not enabled before revision B"'),
);
const onPort = (port: string) =>
  exampleFile(
    `from head.${port} : SiteHead revision A terminate switch
38 ft to caseA1 : CaseBoard address 11 terminate resistor 120 ohm
${soundRemarks}`,
    undefined,
    { head },
  );

export const portReserved: BusRule = {
  id: 'port-reserved',
  scope: 'bus',
  occasions: occasion.unusualPort,
  severity: 'error',
  kinds: 'every',
  explanation: {
    what:
      "A bus is landed on a port that is fitted and not enabled on the node's revision, or may not be where the " +
      'revision is unsaid.',
    why: 'The connector is there and looks like any other; nothing behind it sends or listens.',
    field: 'All devices of the bus are silent, the wiring measures well, and moving the plug to another port cures it.',
    mend: 'Land on an enabled port, or use hardware of a revision that enables this one and write that revision.',
    bad: onPort('field2'),
    good: onPort('field'),
    sources: ["The device's own documentation, as the catalogue repeats it"],
    since: '0.1.0',
  },
  check({ store, bus, census }, report) {
    const { kind } = bus;
    if (kind === undefined) return;
    for (const { device, port, landings } of census.outfits) {
      if (!device || !port?.reserved || !portServes(port, kind)) continue;
      const { revisions, reason, place } = port.reserved;
      const enabled = device.revisions.filter((revision) => !revisions.includes(revision));
      const never = revisions.length === 0 || enabled.length === 0;
      for (const landing of landings) {
        const { node, name } = landing;
        if (!node || (node.revision && !isReserved(port, node))) continue;
        // A revision that the device does not come in has a finding of its own.
        if (!node.revision && node.revisionPlace && !never) continue;
        const because = reason === undefined ? '' : ` (${reason})`;
        const certain = node.revision !== undefined || never;
        report({
          severity: certain ? 'error' : 'warning',
          message: certain
            ? `port ${port.name} of ${node.name} is there and not enabled${node.revision && !never ? ` on revision ${node.revision.value}` : ''}${because}; land bus ${bus.name} on another port`
            : `port ${port.name} of ${node.name} is not enabled on revision ${listed(revisions)}${because}, and the plan does not say which revision ${node.name} is; write it`,
          place: portPlaceOf(landing),
          related: [{ message: 'the port is reserved here', place }],
          at: name,
          fixes: () => [
            ...portFixes(store, bus, landing),
            ...(never ? [] : revisionFixes(bus, landing, port, enabled)),
          ],
        });
      }
    }
  },
};

function revisionFixes(bus: Bus, { node }: Landing, port: Port, enabled: readonly string[]): Fix[] {
  if (!node) return [];
  return enabled.map((revision) => ({
    title: `Make ${node.name} revision ${revision}, which enables port ${port.name}`,
    safe: false,
    edits: [{ kind: 'set-revision', bus: bus.index, node: node.name, revision }],
  }));
}
