import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { sandbox } from '../testing/sandbox.js';

const store = `cable Pair22 "one pair" {
  conductor 22 AWG stranded
  twisted pairs 1
  impedance 120 ohm
  velocity 66 %
}
cable Bell18 { conductor 18 AWG }
device Head {
  role head
  port field : rs485 { load 1/8 edge 250 ns }
}
device Board {
  port field : rs485 { load 1/8 }
}
store northgate {
  node head : Head
  bus cases : modbus-rtu 19200 8E1 on Pair22 {
    from head terminate resistor 120 ohm
    100 m to caseA : Board address 11
    50 m to "=1+1" : Board address 14 terminate resistor 120 ohm
  }
  bus bell : modbus-rtu 9600 on Bell18 {
    from head
    10 m to caseC : Board address 2
  }
}
`;
const wave = (...args: string[]) => sandbox({ 'x.pair': store }).run('wave', 'x.pair', ...args);
const cases = ['--bus', 'cases', '--driver', 'head'];
const outOf = async (...args: string[]) => {
  const { status, out, error } = await wave(...cases, ...args);
  expect({ status, error }).toEqual({ status: 0, error: '' });
  return out;
};

describe('fieldpair wave', () => {
  it('tells people the outcome, a table of the landings and the worst of them drawn', async () => {
    const text = await outOf();
    expect(text).toMatch(
      /^northgate, bus cases: head drives at 19,200 bit\/s\n\nEvery landing is read for certain\. The least\nmargin|^northgate/,
    );
    expect(text).toMatch(/^caseA +sure +[\d.]+ V \(/m);
    expect(text).toMatch(/^ +bits {2}\d/m);
    expect(text).toMatch(/^ +200 mV /m);
    expect(
      Math.max(
        ...text
          .split('\n')
          .filter((line) => /[█▀▄]/.test(line))
          .map((line) => line.length),
      ),
    ).toBeLessThanOrEqual(82);
  });

  it('gives SI units in JSON', async () => {
    const value = JSON.parse(await outOf('--format', 'json'));
    expect(value).toMatchObject({
      schema: 'fieldpair-wave-1',
      store: 'northgate',
      bus: 'cases',
      driver: 'head',
      faults: [],
      edge_s: 250e-9,
    });
    const last = value.landings[2];
    expect(last.landing).toBe('=1+1');
    // 150 m at 66 % of the speed of light in vacuum, 299 792 458 m/s (BIPM, SI Brochure, 9th edition). The copper
    // slows the half of the edge by some of its length.
    expect(last.delay_s).toBeGreaterThan(150 / (0.66 * 299_792_458) - 1e-9);
    expect(last.delay_s).toBeLessThan(150 / (0.66 * 299_792_458) + 250e-9);
    expect(last.pattern_v).toHaveLength(value.pattern.time_s.length);
  });

  it('adds what the bus allows when asked to', async () => {
    expect((await outOf('--advise')).replaceAll('\n', ' ')).toMatch(
      /By its waveforms, [\d,]+ bit\/s is the fastest usual rate .* it may grow by [\d,.]+ m; there /,
    );
    const { advice } = JSON.parse(await outOf('--advise', '--format', 'json'));
    expect(advice).toMatchObject({ cures: [], growth_stopped_by: expect.any(String) });
    expect(advice.fastest_bit_per_s).toBeGreaterThanOrEqual(19_200);
    const { status, error } = await wave(...cases, '--advise', '--format', 'csv');
    expect([status, error]).toEqual([2, expect.stringContaining('--advise goes with --format text or json')]);
  });

  it('gives a column for each landing in CSV, and no formula', async () => {
    const rows = (await outOf('--format', 'csv', '--view', 'step')).trimEnd().split('\r\n');
    expect(rows[0]).toBe("time (s),head (V),caseA (V),'=1+1 (V)");
    expect(rows.length).toBeGreaterThan(20);
    for (const row of rows.slice(1)) expect(row.split(',').map(Number).filter(Number.isFinite)).toHaveLength(4);
  });

  it.each(['pattern', 'step', 'eye'])('draws the %s as SVG', async (view) => {
    const svg = await outOf('--format', 'svg', '--view', view, '--landing', 'caseA', '--landing', '=1+1');
    expect(XMLValidator.validate(svg)).toBe(true);
    expect(new XMLParser().parse(svg).svg.desc).toMatch(/^Levels over time at caseA, =1\+1\./);
  });

  it('takes another rate, edge and pattern, and faults', async () => {
    const value = JSON.parse(
      await outOf(
        '--rate',
        '500 kbit/s',
        '--edge',
        '50 ns',
        '--bits',
        '0110',
        '--fault',
        'no terminator at =1+1',
        '--fault',
        'crossed at caseA',
        '--format',
        'json',
      ),
    );
    expect(value).toMatchObject({
      bit_time_s: 2e-6,
      edge_s: 50e-9,
      faults: ['no terminator at =1+1', 'crossed at caseA'],
    });
    expect(value.pattern.bits).toBe('0110');
    expect(value.landings[1].margin_v.nominal).toBeLessThan(0);
    // An open end doubles what arrives there, and rings.
    expect(value.landings[2].overshoot).toBeGreaterThan(0.1);
  });

  it.each([
    [['--bus', 'case', '--driver', 'head'], 'there is no bus case; there are cases and bell'],
    [['--bus', 'cases', '--driver', 'caseX'], 'bus cases has no landing caseX; did you mean caseA?'],
    [[...cases, '--store', 'south'], 'there is no store south in these files; there are northgate'],
    [[...cases, '--rate', 'fast'], 'rate "fast" is no number with a unit, such as 19200 bit/s'],
    [[...cases, '--edge', '3 m'], 'time "3 m": m is no unit of time; there are s, ms, us, ns'],
    [[...cases, '--bits', '0102'], '--bits 0102 is no row of 2 to 4096 zeros and ones'],
    [
      [...cases, '--fault', 'open from head to =1+1'],
      'no run of bus cases joins head and =1+1; from head runs lead to caseA',
    ],
    [['--bus', 'bell', '--driver', 'head'], 'the waveforms of bus bell cannot be told; unknown: '],
  ])('says in one line why it cannot: %j', async (args, reason) => {
    const { status, out, error } = await wave(...args);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(error.startsWith(`fieldpair: ${reason}`), error).toBe(true);
    expect(error.trimEnd()).not.toContain('\n');
  });

  it('asks which of several stores is meant', async () => {
    const other = store.replace('store northgate', 'store southgate').replace(/^(cable|device)[\s\S]*?^}\n/gm, '');
    const box = sandbox({ 'x.pair': store, 'y.pair': `import "x.pair"\n${other}` });
    const { error } = await box.run('wave', '.', ...cases);
    expect(error).toBe('fieldpair: stores northgate and southgate have a bus cases; name one with --store\n');
    expect((await box.run('wave', '.', ...cases, '--store', 'southgate')).out).toMatch(/^southgate, bus cases/);
  });

  it.each(['ethernet', 'free-topology', 'contact-loop', 'supply'])('says that %s has no waveforms', async (kind) => {
    const text = `store northgate {\n  bus other : ${kind} {\n    from a\n    10 m to b\n  }\n}\n`;
    const { status, error } = await sandbox({ 'x.pair': text }).run(
      'wave',
      'x.pair',
      '--bus',
      'other',
      '--driver',
      'a',
    );
    expect({ status, error }).toEqual({
      status: 2,
      error: `fieldpair: bus other is ${kind}; waveforms are computed for RS-485 and CAN alone\n`,
    });
  });
});
