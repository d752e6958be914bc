import { describe, expect, it } from 'vitest';
import { sandbox } from '../testing/sandbox.js';

const store = `cable Pair22 "one pair" {
  conductor 22 AWG stranded
  twisted pairs 1
  impedance 120 ohm
  velocity 66 %
  resistance 50 ohm/km
}
device Head {
  role head
  port field : rs485 { load 1/8 }
}
device Board {
  port field : rs485 { load 1/8 }
}
store northgate {
  node head : Head
  bus cases : modbus-rtu 19200 8E1 on Pair22 {
    from head terminate resistor 120 ohm
    100 m to caseA : Board address 11
    area "Dairy wall"
    50 m to caseB : Board address 14 terminate resistor 120 ohm
  }
  bus spur : modbus-rtu on Pear22 {
    from head
    3 ft to "=1+1" : Board address 2
  }
}
`;
const figuresOf = async (format: string) => {
  const { status, out, error } = await sandbox({ 'x.pair': store }).run('figures', 'x.pair', '--format', format);
  expect({ status, error }).toEqual({ status: 0, error: '' });
  return out;
};

describe('fieldpair figures', () => {
  it('gives SI units in JSON', async () => {
    const value = JSON.parse(await figuresOf('json'));
    expect(value).toMatchObject({ schema: 'fieldpair-figures-1', stores: [{ store: 'northgate' }] });
    const [cases] = value.stores[0].buses;
    expect(cases).toMatchObject({ bus: 'cases', kind: 'modbus-rtu', length_m: 150, ends: ['head', 'caseB'] });
    // Out and back through 150 m of a cable that states 50 ohm/km for one conductor at 20 degC.
    expect(cases.loop_resistance_ohm).toBeCloseTo(15, 6);
    const last = cases.landings[2];
    expect(last).toMatchObject({ landing: 'caseB', address: 14, area: 'Dairy wall', distance_m: 150 });
    // 150 m at 66 % of the speed of light in vacuum, 299 792 458 m/s (BIPM, SI Brochure, 9th edition).
    expect(last.delay_ns).toBeCloseTo((150 / (0.66 * 299_792_458)) * 1e9, 3);
    // Not more than one terminator beside the other behind the loop, by Ohm's law; inputs can only lower it.
    expect(last.meter_ohm.nominal).toBeLessThanOrEqual(1 / (1 / 120 + 1 / 135) + 1e-6);
    expect(last.meter_ohm.nominal).toBeGreaterThan(60);
  });

  it('says why a figure is unknown', async () => {
    const spur = JSON.parse(await figuresOf('json')).stores[0].buses[1];
    expect(spur.loop_resistance_ohm).toBeNull();
    expect(spur.unknown.loop_resistance_ohm).toMatch(/cable/);
    expect(spur.landings[1].delay_ns).toBeNull();
    expect(spur.landings[1].unknown.delay_ns).toMatch(/cable/);
  });

  it('gives a row for each landing in CSV, and no formula', async () => {
    const rows = (await figuresOf('csv'))
      .trimEnd()
      .split('\r\n')
      .map((row) => row.split(','));
    expect(rows).toHaveLength(6);
    expect(new Set(rows.map((row) => row.length))).toEqual(new Set([27]));
    expect(rows.map((row) => row.at(-1))).toEqual(['area', '', '', 'Dairy wall', '', '']);
    expect(rows[3]?.slice(0, 4)).toEqual(['northgate', 'cases', 'modbus-rtu', '150']);
    expect(rows[5]?.slice(6, 8)).toEqual(["'=1+1", '2']);
  });

  it('shows a page for each bus in text', async () => {
    const text = await figuresOf('text');
    expect(text).toMatch(/^northgate, bus cases\n\nkind +modbus-rtu 19200 8E1\n/);
    expect(text).toMatch(/^caseB +14 +150 m /m);
    expect(text).toMatch(/^meter, .*delay unknown: the cable of the run from head to =1\+1$/m);
  });

  it('counts a store once that several files continue', async () => {
    const box = sandbox({ 'x.pair': store, 'y.pair': 'import "x.pair"\nstore northgate continued {\n}\n' });
    const { out } = await box.run('figures', '.', '--format', 'json');
    expect(JSON.parse(out).stores).toHaveLength(1);
  });

  it('says when there is no bus', async () => {
    const { status, out } = await sandbox({ 'x.pair': 'cable Spare1 {\n}\n' }).run('figures', '.');
    expect({ status, out }).toEqual({ status: 0, out: 'There is no bus in these files.\n' });
  });
});
