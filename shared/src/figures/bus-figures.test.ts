import { describe, expect, it } from 'vitest';
import { busOf, headDevice } from '../testing/network.js';
import { busFigures } from './bus-figures.js';
import { summary } from './summary.js';

const sound = () =>
  busOf('modbus-rtu', { rate: 9600, name: 'cases' })
    .from('head', { device: headDevice, terminate: 120 })
    .to('a', 100, { address: 11 })
    .to('b', 200, { address: 12, terminate: 120 })
    .bias('head', 560)
    .built();

describe('the figures of a bus', () => {
  it('are plain data, whole for a bus that states everything', () => {
    const figures = busFigures(sound().study);
    expect(figures).toMatchObject({
      bus: 'cases',
      kind: 'modbus-rtu',
      length_m: 300,
      unit_loads: 0.375,
      ends: ['head', 'b'],
      // 22 AWG: 105.9 ohm/km out and back (NBS Handbook 100).
      loop_resistance_ohm: expect.closeTo(31.77, 1),
      modbus: { polled_devices: 2, gap_between_frames_s: expect.closeTo(0.00401, 5) },
    });
    expect(figures.unknown).toBeUndefined();
    const [head, first, last] = figures.landings;
    expect(head).toMatchObject({
      landing: 'head',
      address: null,
      distance_m: 0,
      delay_ns: 0,
    });
    expect(first).toMatchObject({ distance_m: 100, delay_ns: expect.closeTo(100 / 0.66 / 0.299792458, 3) });
    expect(last?.unknown).toBeUndefined();
    expect(last?.driven_v?.nominal).toBeLessThan(1.5);
    expect(JSON.parse(JSON.stringify(figures))).toEqual(figures);
  });

  it('say what is missing', () => {
    const { study } = busOf(undefined, { cable: null }).from('a', { device: null }).to('b', 5).from('c').built();
    const figures = busFigures(study);
    expect(figures).toMatchObject({
      kind: null,
      loop_resistance_ohm: null,
      unit_loads: null,
      ends: null,
      bit_time_s: null,
      unknown: {
        kind: 'the kind of the bus',
        unit_loads: 'the unit load of a',
        bit_time_s: 'the rate of the bus',
        ends: expect.any(String),
        loop_resistance_ohm: expect.any(String),
      },
    });
    expect(figures.landings[1]?.unknown).toMatchObject({ delay_ns: 'the cable of the run from a to b' });
    expect(figures.landings[2]?.unknown).toMatchObject({ distance_m: 'no cable leads here from a' });
  });

  it('show an open pair as null inside its range', () => {
    const { study } = busOf('rs485').from('a', { splice: true }).to('b', 5, { splice: true }).built();
    expect(busFigures(study).landings[0]).toMatchObject({
      meter_ohm: { nominal: null, low: null, high: null },
      unknown: { meter_ohm: 'infinite: the pair is open to direct current' },
    });
  });
});

describe('the summary of a bus', () => {
  it('sets each value beside its limit and the document', () => {
    const lines = summary(sound().study);
    expect(lines.map(({ what, limit }) => `${what}: ${limit}`)).toEqual([
      'length: at most 1,000 m',
      'unit loads: at most 28',
      'places that bias: at most 1',
      'least idle level: at least 200 mV',
    ]);
    expect(lines[0]).toMatchObject({ value: '300 m', share: 0.3, strength: 'required' });
    expect(lines.every(({ document }) => document.length > 0)).toBe(true);
  });

  it('adds what the rate allows when it limits, and leaves the load alone without bias', () => {
    const { study } = busOf('rs485', { rate: 115_200 }).from('a', { device: null }).to('b', 1000).built();
    expect(summary(study)).toMatchObject([
      { what: 'length' },
      { what: 'length at 115,200 bit/s', limit: 'at most 868 m', share: expect.closeTo(1.152, 3) },
      { what: 'unit loads', value: 'unknown: the unit load of a', limit: 'at most 32' },
    ]);
  });

  it('holds the longest tap of Modbus against the guide: 20 m, and 40 m over the taps at one landing', () => {
    const tapped = busOf('modbus-rtu').from('head').to('a', 10).tap('p', 5).to('b', 10).tap('q', 4).tap('r', 12);
    // MODBUS over Serial Line V1.02, 3.4.3: 5 of 20 m at a, 12 of 40 / 2 m at b.
    expect(summary(tapped.built().study).find(({ what }) => what === 'longest tap')).toMatchObject({
      value: '12 m',
      limit: 'at most 20 m',
      share: 0.6,
    });
    expect(summary(busOf('modbus-rtu').from('head').to('a', 10).built().study).map(({ what }) => what)).not.toContain(
      'longest tap',
    );
  });

  it('is empty where no number is known for the kind', () => {
    expect(summary(busOf('ethernet').from('a').built().study)).toEqual([]);
  });
});
