/** The commissioning sheet of a bus: in which order to prove it, what a meter must read, and room for what it read. */
import { type BusStudy, isUnknown, type Known, type Range } from '../figures/study.js';
import { idleThreshold } from '../limits/level.js';
import { type Device, rs485Kinds } from '../network.js';
import type { Ohms, Volts } from '../quantity.js';
import { measuringCautions } from './cautions.js';
import { blank, type LengthUnits, lengthCells, lengthColumns, named, nothing, number, reading, text } from './cells.js';
import { commissioningSteps } from './commissioning-steps.js';
import { busTitle } from './names.js';
import type { Block, Cell, Column, Row } from './packet.js';

export function commissioningSheet(study: BusStudy, id: string, units: LengthUnits): Block[] {
  return [
    { kind: 'cautions', texts: measuringCautions },
    { kind: 'heading', text: 'In this order' },
    { kind: 'steps', steps: commissioningSteps(study) },
    readingsTable(study, id, units),
    ...indicators(study),
    {
      kind: 'signatures',
      lines: ['Cable temperature', 'Meter and its number', 'Measured by', 'Date', 'Remarks'],
    },
  ];
}

/** Columns of an expected figure: what to expect, the least and the most that is acceptable, what was read. */
interface Reading {
  readonly columns: readonly Column[];
  /** The cells of one landing. */
  cells(landing: number): readonly Cell[];
  readonly notes: readonly string[];
}

function readingsTable(study: BusStudy, id: string, units: LengthUnits): Block {
  const { bus, shape } = study;
  const readings = [meterReading(study), idleReading(study)].flatMap((one) => one ?? []);
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

const readingColumns = (what: string, unit: string): Column[] => [
  { head: `${what}: expect`, unit, width: 8 },
  { head: 'from', unit, width: 7 },
  { head: 'to', unit, width: 7 },
  { head: 'Read', unit, width: 9 },
];

/** Across the pair, everything connected and nothing powered; undefined for kinds that are not measured so. */
function meterReading({ bus, meter }: BusStudy): Reading | undefined {
  if (bus.kind === undefined || !rs485Kinds.has(bus.kind)) return undefined;
  const ohmsCell = (value: Ohms) => (Number.isFinite(value) ? reading(value, value < 1000 ? 1 : 0) : text('open'));
  return {
    columns: readingColumns('Meter', 'ohm'),
    cells: (landing) => rangeCells(meter[landing]!, ohmsCell),
    notes: [
      'Meter: an ohmmeter across plus and minus with everything landed, nothing powered and both terminators on; from and to allow for tolerances of cable, resistors and meter.',
      ...reasonsOf(meter),
    ],
  };
}

/** Plus to minus while nobody talks; undefined where nothing biases the pair. */
function idleReading({ bus, idle }: BusStudy): Reading | undefined {
  if (bus.biases.length === 0 || bus.kind === undefined || !rs485Kinds.has(bus.kind)) return undefined;
  const threshold = idleThreshold.value;
  const millivolts = (value: Volts) => reading(value * 1000, 0);
  // Below the threshold a receiver reads anything, so that no tolerance makes such a level acceptable.
  const acceptable = idle.map((level) =>
    isUnknown(level) || level.high < threshold ? level : { ...level, low: Math.max(level.low, threshold) as Volts },
  );
  return {
    columns: readingColumns('Idle', 'mV'),
    cells: (landing) => rangeCells(acceptable[landing]!, millivolts),
    notes: [
      `Idle: a voltmeter with its red lead on plus and its black one on minus, powered, while nobody talks; at least ${threshold * 1000} mV (${idleThreshold.source}). A meter on a busy bus shows an average, which is another figure.`,
      ...reasonsOf(idle),
    ],
  };
}

function rangeCells<T extends number>(figure: Known<Range<T>>, cell: (value: T) => Cell): Cell[] {
  if (isUnknown(figure)) return [text('unknown'), nothing, nothing, blank];
  return [cell(figure.nominal), cell(figure.low), cell(figure.high), blank];
}

const reasonsOf = (figures: readonly Known<unknown>[]): string[] => [
  ...new Set(figures.flatMap((figure) => (isUnknown(figure) ? [`Unknown: ${figure.unknown}.`] : []))),
];

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
