/** More cables than plugs at an Ethernet jack. */
import type { Fix, NetworkEdit } from '../../finding.js';
import { listed } from '../../known.js';
import type { Bus, Landing, Port, Run } from '../../network.js';
import { saysMore, visitBy } from '../../visits.js';
import { landablePorts } from '../address/landable-ports.js';
import { linkExample } from '../other-example.js';
import type { BusRule } from '../rule.js';

export const jackShared: BusRule = {
  id: 'jack-shared',
  scope: 'bus',
  severity: 'error',
  kinds: ['ethernet'],
  check({ store, bus }, report) {
    if (bus.damaged) return;
    for (const landing of bus.landings) {
      const { splice, runs, name, place, node } = landing;
      // A splice is a coupler or a panel, which joins two.
      const most = splice === undefined ? 1 : 2;
      if (runs.length <= most || (splice === undefined && !node?.device)) continue;
      const free = landablePorts(store, bus, landing);
      const instead =
        free.length > 0
          ? `land the others on jacks of their own, such as ${listed(free.map((port) => `${node?.name}.${port.name}`))}`
          : 'put a switch there, which has a jack for each';
      report({
        message: `${runs.length} cables of bus ${bus.name} meet at ${name}, which takes ${most === 1 ? 'one plug' : 'two'}; each Ethernet link joins two ports: ${instead}`,
        place,
        related: runs.slice(1).map((run) => ({ message: 'another cable is landed here', place: bus.runs[run]!.place })),
        at: name,
        fixes: () => (splice === undefined ? ownJacks(bus, landing, free) : []),
      });
    }
  },
  explanation: {
    what: 'Two or more cables are landed on one Ethernet jack, as if the link were a bus.',
    why: 'A link of twisted pairs joins exactly two ports, each with its own transmitter and receiver. A second device on the same wires makes neither of the two links work.',
    field: 'The installer finds one jack and two plugs, and a splitter or a small switch appears that no plan knows.',
    mend: 'Give each cable a jack of its own, on a switch or on a device that has a second one.',
    bad: linkExample(['from hub.p1 : NetSwitch', '120 ft to panel1 : Panel', 'from hub.p1', '80 ft to panel2 : Panel']),
    good: linkExample([
      'from hub.p1 : NetSwitch',
      '120 ft to panel1 : Panel',
      'from hub.p2',
      '80 ft to panel2 : Panel',
    ]),
    sources: [
      'from memory of IEEE 802.3, clauses on twisted pair: a link segment joins two',
      'Common practice, no published source',
    ],
    since: '0.1.0',
  },
};

/** Lands all cables but the first on free jacks of the same device, where there are enough. */
function ownJacks(bus: Bus, landing: Landing, free: readonly Port[]): Fix[] {
  const others = landing.runs.slice(1).map((run) => bus.runs[run]!);
  if (free.length < others.length) return [];
  const edits = others.flatMap((run, index) => reland(bus, landing, run, free[index]!) ?? []);
  if (edits.length < others.length) return [];
  const jacks = listed(free.slice(0, others.length).map(({ name }) => `${landing.node?.name}.${name}`));
  return [{ title: `Land the other ${others.length === 1 ? 'cable' : 'cables'} on ${jacks}`, safe: false, edits }];
}

/** The mention by which a run reaches the landing, written with the other port. */
function reland(bus: Bus, landing: Landing, run: Run, port: Port): NetworkEdit | undefined {
  const { visits, index, node } = landing;
  const write = (visit: Landing['visits'][number] | undefined): NetworkEdit | undefined =>
    visit && !saysMore(visit)
      ? { kind: 'write', place: visit.referencePlace, text: `${node?.name}.${port.name}` }
      : undefined;
  if (run.from !== index) return write(visitBy(landing, run));
  // The pen came here by the `from` right in front of the run, or by the run before it.
  const previous = bus.runs[run.index - 1];
  const after = previous?.place.end ?? bus.blockPlace.start;
  return write(
    visits.findLast(
      ({ statement, statementPlace }) =>
        statement === 'from' && after <= statementPlace.start && statementPlace.end <= run.place.start,
    ),
  );
}
