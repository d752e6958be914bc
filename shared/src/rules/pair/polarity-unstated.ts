import { occasion } from '../../figures/occasions.js';
import type { Fix, Severity } from '../../finding.js';
import type { Bus } from '../../network.js';
import type { BusRule } from '../rule.js';
import { exampleFile, soundFile } from './example.js';

export const polarityUnstated: BusRule = {
  id: 'polarity-unstated',
  scope: 'bus',
  occasions: occasion.noColours,
  severity: 'error',
  kinds: ['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485', 'free-topology', 'can', 'contact-loop', 'supply'],
  explanation: {
    what:
      'The bus does not say which colour is plus and which is minus. It is an error where a device on it requires ' +
      'polarity, a warning where devices leave that open, and good practice everywhere else.',
    why:
      'Terminal marks say where plus lands, not which wire of the pair is plus. Without one convention for the whole ' +
      'bus each installer picks a colour, and the first two who pick differently have crossed the pair.',
    field: 'Devices beyond a change of crew or of shift never answer, and the fault moves as wires are tried.',
    mend: 'Write the convention into the bus, such as `colours + white - blue shield drain`, and keep it throughout.',
    bad: exampleFile(`from head : SiteHead terminate switch
38 ft to caseA1 : CaseBoard address 11
22 ft to caseA2 : CaseBoard address 12 terminate resistor 120 ohm
shield earthed at head`),
    good: soundFile,
    sources: ['Common practice, no published source'],
    since: '0.1.0',
  },
  check({ bus }, report) {
    if (bus.damaged || !bus.runs.some(({ spare }) => !spare)) return;
    const { colours } = bus;
    if (colours?.plus !== undefined && colours.minus !== undefined) return;
    const ports = bus.landings.filter(({ port }) => port);
    if (!ports.length) return;
    const strict = ports.find(({ port }) => port?.polarity === 'required');
    const open = ports.find(({ port }) => port?.polarity === undefined);
    const cares = bus.kind !== 'free-topology' && bus.kind !== 'supply' && bus.kind !== 'contact-loop';
    const [first = 'white', second = 'blue'] = conductorColours(bus) ?? [];
    const example = `colours + ${first} - ${second}`;
    const [plus, minus] = bus.kind === 'can' ? ['plus (CAN_H)', 'minus (CAN_L)'] : ['plus', 'minus'];
    const severity: Severity = strict ? 'error' : open && cares ? 'warning' : 'info';
    const because = strict
      ? `${strict.name} requires polarity`
      : severity === 'warning'
        ? `${open?.name} may care for polarity`
        : 'one convention keeps all landings alike';
    report({
      severity,
      message: `bus ${bus.name} does not say which wire is ${plus} and which is ${minus}, and ${because}; write them, such as ${example}`,
      place: colours?.place ?? bus.place,
      related: strict ? [{ message: `${strict.name} requires polarity`, place: strict.place }] : [],
      fixes: () => statementOf(bus),
    });
  },
};

/** Colours of the two conductors when all cables of the bus agree and name just one pair. */
function conductorColours({ cable, runs }: Bus): readonly [string, string] | undefined {
  const [plus, minus, ...others] = cable?.colours ?? [];
  if (plus === undefined || minus === undefined || others.length) return undefined;
  return runs.every((run) => run.spare || run.cable === cable) ? [plus, minus] : undefined;
}

/** Writes the cable's own colours, where no statement about colours is there yet to be completed by hand. */
function statementOf(bus: Bus): Fix[] {
  const pair = conductorColours(bus);
  if (!pair || bus.colours) return [];
  const statement = `colours + ${pair[0]} - ${pair[1]}`;
  return [
    {
      title: `Write ${statement} (the order of cable ${bus.cable?.name})`,
      safe: false,
      edits: [{ kind: 'write', place: bus.endPlace, text: `  ${statement}\n  ` }],
    },
  ];
}
