/** The landing schedule of a bus: every landing in walking order, screw by screw. */
import type { BusStudy } from '../figures/study.js';
import type { Bus, Device, Landing, Run } from '../network.js';
import { type LengthUnits, lengthsText, named, nothing, number, text, tick } from './cells.js';
import { terminalRows } from './conductors.js';
import { settingLines } from './landing-settings.js';
import { deviceLines } from './names.js';
import type { Block, Column, Row } from './packet.js';
import { hasPolarity } from './terminal-roles.js';

const columnsOf = (bus: Bus): Column[] => [
  { head: 'No.', width: 4.5, merged: true },
  { head: 'Landing and place', width: 13, merged: true },
  { head: 'Device and connector', width: 16, merged: true },
  { head: 'Terminal', width: 11.5 },
  { head: 'Cable in', width: 15.5 },
  { head: 'Cable out', width: 15.5 },
  { head: 'Set and do here', width: 20, merged: true },
  ...(hasPolarity(bus) ? [{ head: 'Plus on plus', width: 5, merged: true }] : []),
  { head: 'Done', width: 6 },
];

export function landingSchedule(study: BusStudy, id: string, units: LengthUnits): Block[] {
  const { bus } = study;
  return [
    ...lookOuts(bus),
    {
      kind: 'table',
      table: {
        id,
        title: `Landings of ${bus.label ?? bus.name} in walking order`,
        columns: columnsOf(bus),
        rows: bus.landings.flatMap((landing) => landingRows(bus, landing, units)),
        notes: [
          'Tick each screw when the conductor of this colour is under it and a pull has not moved it.',
          ...(bus.colours === undefined
            ? ['No colours are laid down: write the one that was used beside each screw, the same along the whole bus.']
            : []),
          ...(hasPolarity(bus)
            ? [
                'Plus and minus: go by the marks beside the screws of each device; they differ from maker to maker. Tick the polarity when plus is on plus here and at the landing before.',
              ]
            : []),
        ],
      },
    },
  ];
}

function landingRows(bus: Bus, landing: Landing, units: LengthUnits): Row[] {
  const { into, out } = runsAt(bus, landing);
  const label = landing.node?.label;
  const shared = [
    number(landing.index + 1),
    named(landing.name, label, landing.area?.value),
    text(...deviceLines(landing)),
  ];
  const lines = settingLines(bus, landing);
  const settings = [lines.length === 0 ? nothing : text(...lines), ...(hasPolarity(bus) ? [tick] : [])];
  const rows: Row[] = [
    {
      group: landing.index,
      cells: [
        ...shared,
        text('cable'),
        runTexts(into, (run) => `${farName(bus, run.from)}, ${lengthsText(run.length, units)}`),
        runTexts(out, (run) => `${farName(bus, run.to)}, ${lengthsText(run.length, units)}`),
        ...settings,
        tick,
      ],
    },
  ];
  for (const row of terminalRows(bus, landing, into, out)) {
    const cells = [...shared, text(row.terminal), listOf(row.into), listOf(row.out), ...settings, tick];
    rows.push({ group: landing.index, cells });
  }
  return rows;
}

/** The runs that meet at a landing, as its text draws them: towards it, and from it. */
function runsAt(bus: Bus, { index, runs }: Landing): { into: Run[]; out: Run[] } {
  const all = runs.flatMap((run) => bus.runs[run] ?? []);
  return {
    into: all.filter(({ to }) => to === index),
    out: all.filter(({ from, to }) => from === index && to !== index),
  };
}

const farName = (bus: Bus, landing: number | undefined) =>
  landing === undefined ? 'nowhere yet' : (bus.landings[landing]?.name ?? '');

const listOf = (texts: readonly string[]) => (texts.length === 0 ? nothing : text(...texts));
const runTexts = (runs: readonly Run[], say: (run: Run) => string) => listOf(runs.map(say));

/** Connectors that look right and are not, and the marks by which the hardware is known. */
function lookOuts(bus: Bus): Block[] {
  const devices = new Map<Device, Set<string>>();
  for (const { node } of bus.landings) {
    if (!node?.device) continue;
    const revisions = devices.get(node.device) ?? new Set();
    devices.set(node.device, revisions);
    if (node.revision) revisions.add(node.revision.value);
  }
  const items: string[] = [];
  for (const [device, revisions] of devices) {
    const called = device.label ?? device.name;
    for (const port of device.ports) {
      const name = port.label ?? port.name;
      if (port.twinOf) {
        items.push(
          `${called}: connector ${name} looks like ${port.twinOf.port} and is not for this bus${because(port.twinOf.reason)}.`,
        );
      }
      if (port.reserved && reservedOnAny(port.reserved.revisions, revisions)) {
        items.push(`${called}: connector ${name} is not enabled${because(port.reserved.reason)}.`);
      }
    }
    for (const mark of device.marks) items.push(`${called}: look for the ${mark}.`);
  }
  return items.length === 0
    ? []
    : [
        { kind: 'heading', text: 'Look out for' },
        { kind: 'list', items },
      ];
}

const because = (reason: string | undefined) => (reason === undefined ? '' : `: ${reason}`);

const reservedOnAny = (reserved: readonly string[], used: ReadonlySet<string>) =>
  reserved.length === 0 || used.size === 0 || reserved.some((revision) => used.has(revision));
