import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createStudy } from '../figures/study.js';
import { farads, ohms } from '../quantity.js';
import { busOf, testCable, testDevice } from '../testing/network.js';
import { makePacket } from './make-packet.js';
import type { Cell, Packet, SheetKind, Table } from './packet.js';

const date = '2026-03-14';

const tablesOn = ({ sheets }: Packet, kind: SheetKind): Table[] =>
  sheets
    .filter((sheet) => sheet.kind === kind)
    .flatMap(({ blocks }) => blocks.flatMap((block) => (block.kind === 'table' ? block.table : [])));

const firstLine = (cell: Cell | undefined) => (cell?.kind === 'text' ? cell.lines[0] : undefined);
const numberIn = (cell: Cell | undefined) => (cell?.kind === 'number' ? cell.value : undefined);

/** The cells of a column by its head, one for each row that is no sum. */
function column({ columns, rows }: Table, head: string): (Cell | undefined)[] {
  const index = columns.findIndex((one) => one.head === head);
  expect(index, head).toBeGreaterThanOrEqual(0);
  return rows.filter(({ total }) => !total).map(({ cells }) => cells[index]);
}

/** One bus as somebody might draw it: a chain, or with taps, branches, loops, splices, spares, resistors and bias. */
const anyBus = fc
  .record({
    steps: fc.array(
      fc.record({
        how: fc.constantFrom('to', 'tap', 'back', 'spare', 'lift'),
        length: fc.double({ min: 0, max: 200, noNaN: true }),
        address: fc.option(fc.integer({ min: 1, max: 99 }), { nil: undefined }),
        terminate: fc.option(fc.constantFrom(120, 150), { nil: undefined }),
        splice: fc.boolean(),
        cable: fc.constantFrom('TestPair', 'OtherPair'),
        crossed: fc.boolean(),
      }),
      { maxLength: 12 },
    ),
    bias: fc.boolean(),
    earth: fc.boolean(),
  })
  .map(({ steps, bias, earth }) => {
    const cables = { TestPair: testCable(), OtherPair: testCable({ name: 'OtherPair', colours: ['red', 'black'] }) };
    const device = testDevice('Board', {
      address: { means: 'dial', low: 1, high: 99 },
      terminals: { plus: 'A', minus: 'B' },
    });
    const builder = busOf('modbus-rtu', { cable: cables.TestPair, rate: 19_200 }).from('start', { device });
    for (const [index, { how, length, address, terminate, splice, crossed, ...step }] of steps.entries()) {
      const words = {
        device,
        splice,
        crossed,
        cable: cables[step.cable],
        ...(address !== undefined && !splice && { address }),
        ...(terminate !== undefined && { terminate }),
      };
      if (how === 'to') builder.to(`n${index}`, length, words);
      else if (how === 'tap') builder.tap(`n${index}`, length, words);
      else if (how === 'back') builder.to('start', length, { cable: cables[step.cable] });
      else if (how === 'spare') builder.loose(length, { spare: true, cable: cables[step.cable] });
      else builder.from(`n${index}`, words);
    }
    if (bias) builder.bias('start', 560);
    if (earth) builder.earth('start');
    return builder.built();
  });

describe('a packet of any bus', () => {
  it('has each landing, run and address exactly once on its sheet, in walking order', () => {
    fc.assert(
      fc.property(anyBus, fc.constantFrom('ft', 'm', 'both', undefined), ({ store, bus, study }, unit) => {
        const packet = makePacket(store, [study], { date, ...(unit && { unit }) });
        const names = bus.landings.map(({ name }) => name);

        const [landings] = tablesOn(packet, 'landing-schedule');
        const groups = landings!.rows.filter(({ group }, index) => landings!.rows[index - 1]?.group !== group);
        expect(groups.map(({ cells }) => firstLine(cells[1]))).toEqual(names);

        const [readings] = tablesOn(packet, 'commissioning');
        expect(column(readings!, 'Landing').map(firstLine)).toEqual(names);

        const [runs] = tablesOn(packet, 'pull-list');
        expect(column(runs!, 'Run').map(numberIn)).toEqual(bus.runs.map(({ index }) => index + 1));
        expect(column(runs!, 'From').map(firstLine)).toEqual(bus.runs.map(({ from }) => names[from]));

        const addressed = bus.landings.flatMap(({ address }) => address?.value ?? []);
        const [addresses] = tablesOn(packet, 'address-table');
        expect(column(addresses!, 'Address').flatMap((cell) => numberIn(cell) ?? [])).toEqual(addressed);
      }),
    );
  });

  it('has parts that add up to those of the network', () => {
    fc.assert(
      fc.property(anyBus, ({ store, bus, study }) => {
        const packet = makePacket(store, [study], { date });
        const [devices, cable, small] = tablesOn(packet, 'parts-list');
        const total = (table: Table | undefined, what: string, pattern: RegExp) =>
          table!.rows.reduce((sum, { cells }) => {
            const index = table!.columns.findIndex(({ head }) => head === what);
            return pattern.test(firstLine(cells[0]) ?? '') ? sum + numberIn(cells[index])! : sum;
          }, 0);
        expect(total(devices, 'How many', /./)).toBe(store.nodes.length);
        expect(total(cable, 'Runs', /./)).toBe(bus.runs.length);
        const resistors = bus.landings.flatMap(({ terminations }) => terminations).length;
        expect(total(small, 'How many', /^Terminating resistor/)).toBe(resistors);
        expect(total(small, 'How many', /^Bias resistor/)).toBe(2 * bus.biases.length);
        expect(total(small, 'How many', /^Splice/)).toBe(
          bus.landings.filter(({ splice }) => splice !== undefined).length,
        );
        expect(total(small, 'How many', /^Shield earth/)).toBe(bus.earths.length);
        // The pull lists and the parts list cut the same pieces.
        const pieces = tablesOn(packet, 'pull-list').flatMap((table) =>
          column(table, 'Cut').map((cell) => numberIn(cell)!),
        );
        const sum = pieces.reduce((one, other) => one + other, 0);
        expect(total(cable, 'Cut, all runs', /./)).toBeCloseTo(sum, 1);
        const notes = tablesOn(packet, 'pull-list')[0]!.notes.filter((note) => note.startsWith('Cable: '));
        expect(notes).toHaveLength(new Set(bus.runs.map(({ cable: its }) => its)).size);
        const pieceCounts = notes.map((note) => Number(/ in (\d+) pieces?;/.exec(note)?.[1]));
        expect(pieceCounts.reduce((one, other) => one + other, 0)).toBe(bus.runs.length);
      }),
    );
  });

  it('has as many cells in each row as the table has columns, and ids that differ', () => {
    fc.assert(
      fc.property(anyBus, fc.constantFrom('ft', 'both'), ({ store, study }, unit) => {
        const { sheets } = makePacket(store, [study], { date, unit });
        const tables = sheets.flatMap(({ blocks }) =>
          blocks.flatMap((block) => (block.kind === 'table' ? block.table : [])),
        );
        for (const { columns, rows } of tables)
          for (const { cells } of rows) expect(cells).toHaveLength(columns.length);
        const ids = [...sheets.map(({ id }) => id), ...tables.map(({ id }) => id)];
        expect(new Set(ids).size).toBe(ids.length);
        for (const id of ids) expect(id).toMatch(/^[a-z0-9-]+$/);
      }),
    );
  });
});

describe('a packet', () => {
  const coloured = (differing: Parameters<typeof testCable>[0] = {}) => {
    const built = busOf('modbus-rtu', { cable: testCable(differing), rate: 19_200 })
      .from('head', {
        device: testDevice('Head', { terminals: { plus: 'A', minus: 'B', shield: 'S' } }, { role: 'head' }),
        terminate: 120,
      })
      .to('mid', 10, { address: 7, crossed: true })
      .to('end', 20, { terminate: [{ means: 'resistor', resistance: ohms(120), capacitance: farads(1e-9) }] })
      .earth('head')
      .built();
    const bus = { ...built.bus, colours: { plus: 'white', minus: 'blue', place: built.bus.place } };
    const store = { ...built.store, buses: [bus] };
    return { store, study: createStudy(store, bus) };
  };
  const linesOf = (packet: Packet) =>
    tablesOn(packet, 'landing-schedule')[0]!.rows.map(({ cells }) =>
      cells.map((cell) => (cell.kind === 'text' ? cell.lines.join('; ') : cell.kind)),
    );

  it('tells which colour goes under which screw, and where the pair is crossed', () => {
    const { store, study } = coloured();
    const rows = linesOf(makePacket(store, [study], { date, unit: 'm' }));
    const at = (landing: string) => rows.filter((row) => row[1] === landing).map((row) => row.slice(3, 6));
    expect(at('head')).toEqual([
      ['cable', 'none', 'mid, 10 m'],
      ['A (plus)', 'none', 'white'],
      ['B (minus)', 'none', 'blue'],
      ['S (shield)', 'none', 'drain'],
    ]);
    expect(at('mid')).toEqual([
      ['cable', 'head, 10 m', 'end, 20 m'],
      ['+ (plus)', 'blue', 'blue'],
      ['- (minus)', 'white', 'white'],
    ]);
    expect(rows.find((row) => row[1] === 'head')?.[6]).toBe(
      'Terminator: land a resistor, 120 ohm, across the pair; Shield: land the drain under S; earth it here and nowhere else',
    );
    expect(rows.find((row) => row[1] === 'mid')?.[6]).toMatch(/^Terminator: none here; .*; Pair crossed here/);
    expect(rows.find((row) => row[1] === 'end')?.[6]).toMatch(/120 ohm and 1 nF in series/);
  });

  it('says when a cable has no conductor of the colour that the bus names', () => {
    const { store, study } = coloured({ colours: ['red', 'white'] });
    const rows = linesOf(makePacket(store, [study], { date }));
    expect(rows.find((row) => row[1] === 'head' && row[3] === 'B (minus)')?.[5]).toBe('no blue in it (red, white)');
  });

  it.each(['ft', 'm'] as const)('draws lengths in %s where all sheets have them so', (unit) => {
    const { store, study } = coloured();
    const { sheets } = makePacket(store, [study], { date, unit });
    const drawings = sheets.flatMap(({ blocks }) =>
      blocks.flatMap((block) => (block.kind === 'drawing' ? [block.wide, block.narrow] : [])),
    );
    expect(drawings).toHaveLength(2);
    for (const { shapes } of drawings) {
      const texts = shapes.flatMap((shape) => (shape.shape === 'text' ? shape.text : [])).join(' ');
      expect(texts).toMatch(unit === 'ft' ? /\d ft\b/ : /\d m\b/);
      expect(texts).not.toMatch(unit === 'ft' ? /\d m\b/ : /\d ft\b/);
    }
  });

  it('gives a resistor and a capacitor for a terminator that has both', () => {
    const { store, study } = coloured();
    const small = tablesOn(makePacket(store, [study], { date }), 'parts-list')[2]!;
    expect(small.rows.map(({ cells }) => [firstLine(cells[0]), numberIn(cells[1])])).toEqual([
      ['Terminating resistor, 120 ohm', 2],
      ['Terminating capacitor, 1 nF', 1],
      ['Shield earth connection', 1],
    ]);
  });

  it('warns on every sheet of a plan with errors, and not of what was agreed', () => {
    const { store, study } = coloured();
    const place = store.place;
    const error = {
      rule: 'any',
      severity: 'error' as const,
      message: 'it is wrong',
      place,
      related: [],
      fixes: () => [],
    };
    const waived = { ...error, waived: { reason: 'agreed', place } };
    expect(makePacket(store, [study], { date, findings: [waived] }).remark).toBeUndefined();
    const packet = makePacket(store, [study], { date, findings: [error, error, waived] });
    expect(packet.remark).toBe('2 errors open in this plan: do not build from it');
    expect(JSON.stringify(packet.sheets[0])).toContain('it is wrong Agreed because: agreed');
  });

  it('carries the usual cautions and proves dead before anything else', () => {
    const { store, study } = coloured();
    const packet = makePacket(store, [study], { date });
    const texts = JSON.stringify(packet.sheets[0]);
    for (const word of ['lock out', 'prove dead', 'qualified', 'mains', 'local code', 'not an approval']) {
      expect(texts.toLowerCase()).toContain(word);
    }
    const steps = packet.sheets
      .find(({ kind }) => kind === 'commissioning')!
      .blocks.flatMap((block) => (block.kind === 'steps' ? block.steps : []));
    const words = steps.map((step) => step.slice(0, step.indexOf(':')));
    expect(words).toEqual(['Dead', 'Look', 'Shield', 'Loop', 'Terminators', 'Addresses', 'Power', 'Traffic', 'Record']);
  });

  it('expects at each landing what the study computes, and never accepts an idle level below 200 mV (TIA-485-A)', () => {
    const { store, study } = busOf('modbus-rtu', { rate: 19_200 })
      .from('head', { terminate: 120 })
      .to('end', 300, { terminate: 120 })
      .bias('head', 600)
      .built();
    const [readings] = tablesOn(makePacket(store, [study], { date }), 'commissioning');
    const meters = column(readings!, 'Meter: expect').map(numberIn);
    expect(meters).toEqual(study.meter.map((one) => ('nominal' in one ? Number(one.nominal.toFixed(1)) : undefined)));
    const heads = readings!.columns.map(({ head }) => head);
    const from = heads.lastIndexOf('from');
    for (const { cells } of readings!.rows) expect(numberIn(cells[from])).toBeGreaterThanOrEqual(200);
  });

  it('is the same for the same input', () => {
    const { store, study } = coloured();
    expect(makePacket(store, [study], { date })).toEqual(makePacket(store, [study], { date }));
  });
});

describe('a contact in one conductor', () => {
  it('has the two ends of that conductor on its terminals, and the other one passes by', () => {
    const built = busOf('contact-loop').from('panel').to('door', 10).to('end', 5).built();
    const { place } = built.bus;
    const landings = built.bus.landings.map((landing) =>
      landing.name === 'door'
        ? { ...landing, wiring: { kind: 'breaks', conductor: 'plus', bridge: ohms(4700), place } as const }
        : landing,
    );
    const bus = { ...built.bus, landings, colours: { plus: 'red', minus: 'black', place } };
    const store = { ...built.store, buses: [bus] };
    const packet = makePacket(store, [createStudy(store, bus)], { date });
    const rows = tablesOn(packet, 'landing-schedule')[0]!.rows.filter(({ cells }) => firstLine(cells[1]) === 'door');
    expect(rows.slice(1).map(({ cells }) => cells.slice(3, 6).map(firstLine))).toEqual([
      ['+', 'plus: red', undefined],
      ['-', undefined, 'plus: red'],
      ['joined, off the device', 'minus: black', 'minus: black'],
    ]);
    const parts = tablesOn(packet, 'parts-list')[2]!.rows.map(({ cells }) => firstLine(cells[0]));
    expect(parts).toEqual(['Contact resistor, 4.7 kohm']);
  });
});
