/** The commissioning sheet of a bus: in which order to prove it, what a meter must read, and room for what it read. */
import { type BusStudy, isUnknown } from '../figures/study.js';
import type { Device } from '../network.js';
import type { LoopState } from '../physics/contact-loop.js';
import { measuringCautions } from './cautions.js';
import { blank, type LengthUnits, lengthCells, lengthColumns, named, nothing, number, text } from './cells.js';
import { commissioningSteps } from './commissioning-steps.js';
import { busTitle } from './names.js';
import type { Block, Row } from './packet.js';
import { ohmsCell, readingColumns, readingsOf } from './readings.js';

export function commissioningSheet(study: BusStudy, id: (name: string) => string, units: LengthUnits): Block[] {
  return [
    { kind: 'cautions', texts: measuringCautions },
    { kind: 'heading', text: 'In this order' },
    { kind: 'steps', steps: commissioningSteps(study) },
    ...indicators(study),
    readingsTable(study, id('readings'), units),
    ...statesTable(study, id('states')),
    {
      kind: 'signatures',
      lines: ['Cable temperature', 'Meter and its number', 'Measured by', 'Date', 'Remarks'],
    },
  ];
}

function readingsTable(study: BusStudy, id: string, units: LengthUnits): Block {
  const { bus, shape } = study;
  const readings = readingsOf(study);
  const rows = bus.landings.map(({ index, name, node }): Row => {
    const distance = shape.distance[index];
    return {
      group: index,
      cells: [
        number(index + 1),
        named(name, node?.label),
        ...(distance === undefined ? units.map(() => text('not joined')) : lengthCells(distance, units)),
        ...readings.flatMap((reading) => reading.cells(index)),
        blank,
        blank,
      ],
    };
  });
  return {
    kind: 'table',
    table: {
      id,
      title: `Readings of ${busTitle(bus)}`,
      columns: [
        { head: 'No.', width: 5 },
        { head: 'Landing', width: 17 },
        ...lengthColumns('Along cable', units),
        ...readings.flatMap(({ columns }) => columns),
        { head: 'Answers', width: 9 },
        { head: 'Initials', width: 8 },
      ],
      rows,
      notes: readings.flatMap(({ notes }) => notes),
    },
  };
}

/** What a contact loop shows its input in each state; nothing for other kinds. */
function statesTable({ bus, contactLoop }: BusStudy, id: string): Block[] {
  if (isUnknown(contactLoop) || contactLoop.states.length === 0) return [];
  const rows = contactLoop.states.map(
    ({ state, landing, resistance, reading }, group): Row => ({
      group,
      cells: [
        named(state, landing === undefined ? undefined : bus.landings[landing]?.name),
        ohmsCell(resistance.nominal),
        ohmsCell(resistance.low),
        ohmsCell(resistance.high),
        blank,
        reading === undefined ? nothing : text(readingWords[reading]),
        blank,
      ],
    }),
  );
  return [
    {
      kind: 'table',
      table: {
        id,
        title: `States of ${busTitle(bus)} as its input sees them`,
        columns: [
          { head: 'State', width: 22 },
          ...readingColumns('Input', 'ohm'),
          { head: 'The input takes it for', width: 16 },
          { head: 'Initials', width: 8 },
        ],
        rows,
        notes: ['A cut and a short are told over every place where they can be.'],
      },
    },
  ];
}

const readingWords: Readonly<Record<NonNullable<LoopState['reading']>, string>> = {
  normal: 'normal',
  alarm: 'alarm',
  fault: 'fault',
  unsure: 'not certain: ask',
};

/** The lights that tell whether the bus works, by device. */
function indicators({ bus }: BusStudy): Block[] {
  const devices = new Set<Device>(bus.landings.flatMap(({ node }) => node?.device ?? []));
  const items = [...devices].flatMap((device) =>
    device.indicators.map(
      ({ name, text: meaning }) =>
        `${device.label ?? device.name}, ${name}: ${meaning || 'see the maker\u2019s instructions'}.`,
    ),
  );
  return items.length === 0
    ? []
    : [
        { kind: 'heading', text: 'Lights to look at' },
        { kind: 'list', items },
      ];
}
