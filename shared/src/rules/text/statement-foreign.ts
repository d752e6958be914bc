/** A statement that speaks of another kind of bus. */
import { occasion } from '../../figures/occasions.js';
import type { BusKind, Place } from '../../network.js';
import { canExample } from '../other-example.js';
import type { BusRule } from '../rule.js';

const line = [
  'from head : RackHead terminate switch',
  '60 ft to valve1 : ValveBoard address 1 terminate resistor 120 ohm',
];

export const statementForeign: BusRule = {
  id: 'statement-foreign',
  scope: 'bus',
  occasions: occasion.foreignStatement,
  severity: 'warning',
  kinds: 'every',
  check({ bus }, report) {
    if (bus.damaged) return;
    const tell = (what: string, kinds: string, place: Place, at?: string) =>
      report({
        message: `${what} speaks of ${kinds} and bus ${bus.name} is ${bus.kind}; remove it`,
        place,
        ...(at !== undefined && { at }),
        unnecessary: true,
        fixes: () => [{ title: `Remove ${what}`, safe: false, edits: [{ kind: 'write', place, text: '' }] }],
      });
    const { kind, samplePoint, guide, runs, landings } = bus;
    if (kind !== 'can' && samplePoint) tell('sample at', 'CAN', samplePoint.place);
    if (kind !== 'can' && guide) tell('guide', 'CAN', guide.place);
    if (kind !== 'ethernet')
      for (const { cords, to, from } of runs)
        if (cords) tell('cords', 'Ethernet', cords.place, landings[to ?? from]?.name);
    if (kind === undefined || !withoutEnds.has(kind)) return;
    for (const { terminations, name } of landings)
      for (const { place } of terminations) if (place) tell('terminate', 'buses with ends', place, name);
  },
  explanation: {
    what: 'A statement speaks of another kind of bus than the one it is written in, or an address of a splice, so that nothing comes of it.',
    why: 'Whoever reads the plan takes it for a fact. Often the kind of the bus was changed and the statement stayed.',
    field: 'The installer looks for what is not there.',
    mend: 'Remove the statement, or correct the kind of the bus.',
    bad: canExample([...line, '30 ft cords 10 ft spare']),
    good: canExample([...line, '30 ft spare']),
    sources: ['definition of the .pair language'],
    since: '0.1.0',
  },
};

const withoutEnds: ReadonlySet<BusKind> = new Set<BusKind>(['ethernet', 'supply']);
