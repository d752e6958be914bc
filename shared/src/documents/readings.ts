/** What a meter must read at each landing, with what is acceptable and room for what it read. */
import { type BusStudy, isUnknown, type Known, type Range } from '../figures/study.js';
import { idleThreshold } from '../limits/level.js';
import { rs485Kinds } from '../network.js';
import type { Ohms, Volts } from '../quantity.js';
import { blank, nothing, reading, text } from './cells.js';
import type { Cell, Column } from './packet.js';

/** Columns of an expected figure: what to expect, the least and the most that is acceptable, what was read. */
export interface Reading {
  readonly columns: readonly Column[];
  /** The cells of one landing. */
  cells(landing: number): readonly Cell[];
  readonly notes: readonly string[];
}

/** The figures that are read on a bus of this kind. */
export function readingsOf(study: BusStudy): Reading[] {
  return [meterReading(study), idleReading(study), supplyReading(study)].flatMap((one) => one ?? []);
}

export const readingColumns = (what: string, unit: string): Column[] => [
  { head: `${what}: expect`, unit, width: 8 },
  { head: 'from', unit, width: 7 },
  { head: 'to', unit, width: 7 },
  { head: 'Read', unit, width: 9 },
];

export const ohmsCell = (value: Ohms): Cell =>
  Number.isFinite(value) ? reading(value, value < 1000 ? 1 : 0) : text('open');

/** Across the pair, nothing powered; undefined for kinds that are not measured so. */
function meterReading({ bus, meter }: BusStudy): Reading | undefined {
  const { kind } = bus;
  if (kind === undefined || kind === 'ethernet' || kind === 'supply') return undefined;
  const how =
    kind === 'contact-loop'
      ? 'with the loop lifted off its input and every contact at rest'
      : 'with everything landed, nothing powered and the terminators on';
  return {
    columns: readingColumns('Meter', 'ohm'),
    cells: (landing) => rangeCells(meter[landing]!, ohmsCell),
    notes: [
      `Meter: an ohmmeter across the two wires ${how}; from and to allow for tolerances of cable, resistors and meter.`,
      ...reasonsOf(meter),
    ],
  };
}

/** Plus to minus while nobody talks; undefined where nothing biases the pair. */
function idleReading({ bus, idle }: BusStudy): Reading | undefined {
  if (bus.biases.length === 0 || bus.kind === undefined || !rs485Kinds.has(bus.kind)) return undefined;
  const threshold = idleThreshold.value;
  // Below the threshold a receiver reads anything, so that no tolerance makes such a level acceptable.
  const acceptable = idle.map((level) =>
    isUnknown(level) || level.high < threshold ? level : { ...level, low: Math.max(level.low, threshold) as Volts },
  );
  return {
    columns: readingColumns('Idle', 'mV'),
    cells: (landing) => rangeCells(acceptable[landing]!, (value) => reading(value * 1000, 0)),
    notes: [
      `Idle: a voltmeter with its red lead on plus and its black one on minus, powered, while nobody talks; at least ${threshold * 1000} mV (${idleThreshold.source}). A meter on a busy bus shows an average, which is another figure.`,
      ...reasonsOf(idle),
    ],
  };
}

/** Plus to minus with every load on; undefined for what is no supply. */
function supplyReading({ bus, supply }: BusStudy): Reading | undefined {
  if (bus.kind !== 'supply') return undefined;
  const levels = isUnknown(supply) ? bus.landings.map(() => supply) : supply.volts;
  return {
    columns: readingColumns('Voltage', 'V'),
    cells: (landing) => rangeCells(levels[landing]!, (value) => reading(value, 2)),
    notes: [
      'Voltage: a voltmeter across the two wires. Expected with every load drawing what it states; from is with the source at its least, the most drawn and warm cable, to is with the source at its most and nothing drawn.',
      ...reasonsOf(levels),
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
