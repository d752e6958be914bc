/** The parts of a store: devices, cable, terminators, bias resistors, splices, earths, each with how many. */
import type { Bus, Store, Termination } from '../network.js';
import { formatAmperes, formatFarads, formatOhms, formatResistor, metres } from '../quantity.js';
import { type LengthUnits, lengthCells, lengthColumns, named, number, text, tick } from './cells.js';
import { busTitle, cableText, deviceText } from './names.js';
import type { Block, Cell, Row } from './packet.js';
import { cutsByCable, type PullOptions } from './pull-list.js';
import { reelsFor, slackText } from './slack.js';

interface Part {
  readonly what: string;
  readonly buses: Set<Bus>;
  count: number;
}

export function partsList({ nodes, buses }: Store, options: PullOptions): Block[] {
  return [
    countTable('parts-devices', 'Devices', 'Device', deviceParts(nodes, buses), []),
    cableTable(buses, options),
    countTable('parts-small', 'Resistors, splices and earths', 'Part', smallParts(buses), [
      ...(buses.some(isModbusWithResistors) ? [modbusPower] : []),
      'Terminators that are built into devices are no parts; the landing schedule says which are switched on.',
    ]),
  ];
}

const modbusPower =
  'Terminators on a Modbus line: 0.5 W for a plain resistor, 0.25 W with a capacitor of 10 V or more in series (MODBUS over Serial Line V1.02, 3.4.5).';

const isModbusWithResistors = ({ kind, landings }: Bus) =>
  kind === 'modbus-rtu' && landings.some(({ terminations }) => terminations.some(({ means }) => means === 'resistor'));

function countTable(id: string, title: string, head: string, parts: readonly Part[], notes: readonly string[]): Block {
  const rows = parts.map(
    ({ what, count, buses }, group): Row => ({
      group,
      cells: [named(what), number(count), usedIn(buses), tick],
    }),
  );
  const columns = [
    { head, width: 40 },
    { head: 'How many', width: 10 },
    { head: 'Where', width: 40 },
    { head: 'Here', width: 6 },
  ];
  return { kind: 'table', table: { id, title, columns, rows, notes: rows.length === 0 ? ['None.'] : notes } };
}

const usedIn = (buses: ReadonlySet<Bus>): Cell =>
  buses.size === 0 ? text('on no bus') : text([...buses].map(busTitle).join(', '));

/** By what a person orders: device and revision. */
function deviceParts(nodes: Store['nodes'], buses: readonly Bus[]): Part[] {
  const busesOf = new Map<Store['nodes'][number], Set<Bus>>();
  for (const bus of buses) {
    for (const { node } of bus.landings) {
      if (!node) continue;
      const known = busesOf.get(node);
      if (known) known.add(bus);
      else busesOf.set(node, new Set([bus]));
    }
  }
  const count = counter();
  for (const node of nodes) {
    const name = node.device?.label === undefined ? '' : ` (${node.device.name})`;
    count.add(`${deviceText({ node })}${name}`, 1, busesOf.get(node) ?? []);
  }
  return count.parts();
}

function smallParts(buses: readonly Bus[]): Part[] {
  const count = counter();
  for (const bus of buses) {
    const add = (what: string, many = 1) => count.add(what, many, [bus]);
    const ends = bus.kind === 'contact-loop' ? 'End-of-line' : 'Terminating';
    for (const { terminations, wiring } of bus.landings) {
      for (const { means, ...values } of terminations) if (means === 'resistor') addResistor(ends, values, add);
      const contact = wiring?.kind === 'breaks' ? wiring.bridge : wiring?.through;
      if (contact !== undefined) add(`Contact resistor, ${formatResistor(contact)}`);
    }
    for (const { builtIn, up, down } of bus.biases) {
      if (builtIn) continue;
      for (const value of [up, down]) add(`Bias resistor, ${formatOhms(value)}`);
    }
    for (const { fuse, cords } of bus.runs) {
      if (fuse) add(`Fuse, ${formatAmperes(fuse.value)}`);
      if (cords) add(`Pair of patch cords${cords.cable ? `, ${cableText(cords.cable)}` : ''}`);
    }
    const splices = bus.landings.filter(({ splice }) => splice !== undefined).length;
    if (0 < splices) add('Splice', splices);
    for (const { through } of bus.earths) {
      add('Shield earth connection');
      if (through) addResistor('Earthing', through, add);
    }
  }
  return count.parts();
}

function addResistor(role: string, { resistance, capacitance }: Termination, add: (what: string) => void): void {
  add(`${role} resistor, ${formatResistor(resistance)}`);
  if (capacitance !== undefined) add(`${role} capacitor, ${formatFarads(capacitance)}`);
}

function counter() {
  const counts = new Map<string, Part>();
  return {
    add(what: string, many: number, buses: Iterable<Bus>): void {
      const part = counts.get(what) ?? { what, count: 0, buses: new Set() };
      part.count += many;
      for (const bus of buses) part.buses.add(bus);
      counts.set(what, part);
    },
    parts: () => [...counts.values()],
  };
}

function cableTable(buses: readonly Bus[], { units, slack, reel }: PullOptions): Block {
  const rows = [...cutsByCable(buses, slack, units[0])].map(([cable, { cuts, buses: used }], group): Row => {
    const reels = reelsFor(cuts, reel);
    return {
      group,
      cells: [
        named(cableText(cable)),
        number(cuts.length),
        ...lengthCells(metres(cuts.reduce((sum, cut) => sum + cut, 0)), units),
        reels === undefined ? text('a run is longer than a reel') : number(reels),
        usedIn(used),
        tick,
      ],
    };
  });
  return {
    kind: 'table',
    table: {
      id: 'parts-cable',
      title: 'Cable',
      columns: [
        { head: 'Cable', width: 30 },
        { head: 'Runs', width: 6 },
        ...lengthColumns('Cut, all runs', units),
        { head: 'Reels', width: 8 },
        { head: 'Where', width: 30 },
        { head: 'Here', width: 6 },
      ],
      rows,
      notes: [
        `Cut: ${slackText(slack, units)}.`,
        `Reels of ${reelText(reel, units)}, so many that no run needs a joint; cut the longest runs first.`,
      ],
    },
  };
}

const reelText = (reel: PullOptions['reel'], units: LengthUnits) =>
  lengthCells(reel, units)
    .map((cell) => (cell.kind === 'number' ? cell.text : ''))
    .join(' or ');
