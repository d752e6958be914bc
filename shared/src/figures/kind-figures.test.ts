import { describe, expect, it } from 'vitest';
import { farads, ohms, seconds } from '../quantity.js';
import { busOf, testCable, testDevice } from '../testing/network.js';
import { busFigures } from './bus-figures.js';
import { busPage } from './page/bus-page.js';
import { summary } from './summary.js';

const rc = (resistance: number) => [
  { means: 'resistor' as const, resistance: ohms(resistance), capacitance: farads(100e-6) },
];
const whole = (value: unknown) => expect(JSON.parse(JSON.stringify(value))).toEqual(value);

describe('the figures of CAN', () => {
  const device = testDevice('Node', { kind: 'can', resistance: ohms(30_000), delay: seconds(200e-9) });
  const line = (rate?: number) =>
    busOf('can', rate === undefined ? {} : { rate })
      .from('a', { device, terminate: 120 })
      .tap('probe', 2, { device })
      .to('b', 60, { device, terminate: 120 })
      .built().study;

  it('tell the bit, the line and the levels', () => {
    const figures = busFigures(line(500_000));
    whole(figures);
    expect(figures.can).toMatchObject({
      sample_point: 0.875,
      // The probe is farther from b than a is, by its stub: 62 m at 66 %, twice, and two transceivers.
      propagation_between: ['probe', 'b'],
      propagation_s: expect.closeTo(400e-9 + (2 * 62) / 0.66 / 299_792_458, 12),
      loop_delays_assumed: false,
      line_m: 60,
      line_limit_m: 100,
      wire_reach_m: expect.any(Number),
    });
    expect(figures.landings.map(({ idle_v }) => idle_v?.nominal)).toEqual([0, 0, 0]);
    expect(figures.landings[0]?.driven_v?.nominal).toBeLessThan(1.5);
    expect(figures).toMatchObject({
      unit_loads: null,
      unknown: { unit_loads: expect.stringContaining('RS-485 alone') },
    });
  });

  it('say why they are unknown without a rate', () => {
    expect(busFigures(line()).can).toMatchObject({
      propagation_s: null,
      line_limit_m: null,
      unknown: { propagation_s: 'the rate of the bus', line_limit_m: expect.any(String) },
    });
  });

  it('stand beside their limits, each with its document', () => {
    const lines = summary(line(500_000));
    expect(lines.map(({ what }) => what)).toEqual([
      'end to end',
      'longest stub',
      'all stubs',
      'way there and back',
      'length for its conductors',
      'one conductor',
      'driver at a',
    ]);
    // CiA table at 500 kbit/s: 100 m, 5.5 m, 27.5 m.
    expect(lines.slice(0, 3).map(({ share }) => share)).toEqual([
      0.6,
      expect.closeTo(2 / 5.5),
      expect.closeTo(2 / 27.5),
    ]);
    expect(lines.every(({ document }) => document !== '')).toBe(true);
  });

  it('are on the page, with the levels of every landing', () => {
    const { lines } = busPage(line(500_000));
    expect(lines.find((text) => text.startsWith('landing '))?.split(/ {2,}/)).toEqual([
      ...['landing', 'address', 'distance', 'meter', 'recessive', 'dominant', 'delay'],
    ]);
    expect(lines.some((text) => /^kind +can 500 kbit\/s$/.test(text))).toBe(true);
  });
});

describe('the figures of free topology', () => {
  const cable = testCable({ class: 'level-4', shield: 'none' });
  const star = (differing = cable) =>
    busOf('free-topology', { cable: differing })
      .from('head', { terminate: rc(52.3) })
      .to('a', 100)
      .from('head')
      .to('b', 150)
      .from('head')
      .to('c', 50)
      .built().study;

  it('tell its form, its farthest devices and the limits of its class', () => {
    const figures = busFigures(star());
    whole(figures);
    expect(figures.free_topology).toEqual({
      form: 'free',
      devices: 4,
      farthest_m: 250,
      farthest_between: ['a', 'b'],
      bus_limit_m: 1400,
      apart_limit_m: 400,
      total_limit_m: 500,
    });
  });

  it('show an open pair, for capacitors block the meter, and no levels', () => {
    const [landing] = busFigures(star()).landings;
    expect(landing).toMatchObject({
      meter_ohm: { nominal: null, low: null, high: null },
      idle_v: null,
      unknown: {
        meter_ohm: expect.stringContaining('open to direct current'),
        idle_v: expect.stringContaining('none'),
      },
    });
  });

  it('see a plain resistor that was landed by mistake', () => {
    const { study } = busOf('free-topology', { cable }).from('a', { terminate: 105 }).to('b', 10).built();
    expect(busFigures(study).landings[0]?.meter_ohm?.nominal).toBeCloseTo(105, 0);
  });

  it('say that limits are unknown without a class', () => {
    const { class: _, ...bare } = cable;
    expect(busFigures(star(bare)).free_topology).toMatchObject({
      total_limit_m: null,
      unknown: { total_limit_m: 'the class of TestPair' },
    });
    expect(busPage(star(bare)).lines.some((text) => text.includes('TestPair does not say'))).toBe(true);
  });
});

describe('the figures of Ethernet', () => {
  const links = () =>
    busOf('ethernet', { cable: testCable({ gauge: 24 }) })
      .from('p1')
      .to('a', 40)
      .from('p2')
      .to('b', 80)
      .built().study;

  it('are those of each link', () => {
    const figures = busFigures(links());
    whole(figures);
    expect(figures.ethernet?.links).toMatchObject([
      { from: 'p1', to: 'a', length_m: 40, cords_m: null },
      // 24 AWG: 84.2 ohm/km of one conductor (NBS Handbook 100).
      { from: 'p2', to: 'b', length_m: 80, loop_resistance_ohm: { nominal: expect.closeTo(2 * 0.0842 * 80, 1) } },
    ]);
    expect(figures.landings.map(({ distance_m }) => distance_m)).toEqual([0, 40, 0, 80]);
    expect(figures.landings[0]?.meter_ohm).toBeNull();
  });

  it('stand beside the limits of a link', () => {
    const lines = summary(links());
    expect(lines.map(({ what }) => what)).toEqual([
      'longest link',
      'longest with cords',
      'largest loop',
      'longest delay',
    ]);
    expect(lines[0]?.share).toBeCloseTo(80 / 90);
    expect(lines[1]).toMatchObject({ value: 'unknown: the cords: no run states them' });
    expect(busPage(links()).lines).toContain('shape   2 links');
  });
});

it('nothing fails on buses without landings, runs, cables or rates', () => {
  for (const kind of ['can', 'free-topology', 'ethernet'] as const) {
    const bare = [busOf(kind), busOf(kind).from('a'), busOf(kind, { cable: null }).from('a').to('b', 5).loose(3)];
    for (const bus of bare) {
      const { study } = bus.built();
      whole(busFigures(study));
      expect(busPage(study).lines.join('\n')).not.toMatch(/NaN|undefined|Infinity/);
    }
  }
});
