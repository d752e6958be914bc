import { describe, expect, it } from 'vitest';
import { isUnknown, type Known, type Range } from '../known.js';
import type { Port } from '../network.js';
import { ohms, ohmsPerMetre, ratio, seconds } from '../quantity.js';
import { busOf, testCable, testDevice } from '../testing/network.js';
import { longestByPropagation, longestByResistance, propagation, usualLoopDelay, wireReach } from './can.js';
import { speedOfLight } from './delay.js';

const canDevice = (port: Partial<Port> = {}) => testDevice('Node', { kind: 'can', ...port });
const nominal = <T extends number>(value: Known<Range<T>> | undefined) =>
  value === undefined || isUnknown(value) ? Number.NaN : (value.nominal as number);

describe('how far the conductors of CAN carry', () => {
  // Philips AN96116, appendix 3: the reprinted table rounds down to 200, 360 and 550 m for 32 nodes, from 1.5 V, 1 V,
  // 20 kohm, 118 ohm and a margin of 20 %.
  it.each([
    [0.09, 201.5, 200],
    [0.05, 362.7, 360],
    [0.033, 549.6, 550],
  ])('%f ohm/m: %f m, printed as %i m', (resistance, exact, printed) => {
    const reach = longestByResistance({ resistance, terminator: ohms(118), input: ohms(20_000), nodes: 32 });
    expect(reach).toBeCloseTo(exact, 1);
    expect(Math.abs(reach - printed)).toBeLessThan(3);
  });

  it('is where a receiver behind all other nodes gets 1.1 V: equation 11 against the nodal solution', () => {
    const nodes = 12;
    const cable = testCable({ resistance: ohmsPerMetre(0.09) });
    const reach = longestByResistance({ resistance: 0.09, terminator: ohms(120), input: ohms(20_000), nodes });
    const bus = busOf('can', { cable }).from('a', { device: canDevice(), terminate: 120 });
    bus.to('b', reach, { device: canDevice() });
    for (let node = 2; node < nodes; node++) bus.to(`n${node}`, 1e-6, { device: canDevice() });
    const { study } = bus.to('end', 1e-6, { splice: true, terminate: 120 }).built();
    // Driven from the near end: 1.5 V less what the far terminator and the other nodes drop on the way.
    expect(nominal(study.driven[nodes])).toBeCloseTo(1 + 0.2 * 0.5, 3);
  });

  it('takes the smaller terminator at its least and the hottest conductor', () => {
    const build = (ambient?: number) =>
      busOf('can', { cable: testCable(), ...(ambient === undefined ? {} : { ambient }) })
        .from('a', { device: canDevice(), terminate: 124 })
        .to('b', 100, { device: canDevice(), terminate: 120 })
        .built().study;
    const [cool, warm] = [wireReach(build()), wireReach(build(60))];
    expect(warm).toBeLessThan(cool as number);
    // 22 AWG: 52.96 ohm/km (NBS Handbook 100), 5 % up; 120 ohm, 5 % down; two nodes of 20 kohm.
    expect(cool).toBeCloseTo((0.36364 * ((114 * 20_000) / (20_000 + 114))) / (2 * 0.05296 * 1.05), 0);
  });

  it('counts the usual terminators where there are none, and is unknown for what is no line', () => {
    const line = (terminate?: number) =>
      wireReach(
        busOf('can')
          .from('a', terminate === undefined ? {} : { terminate })
          .to('b', 10, terminate === undefined ? {} : { terminate })
          .built().study,
      );
    expect(line()).toBe(line(120));
    const star = busOf('can').from('a').to('b', 5).from('a').to('c', 5).from('a').to('d', 5).built().study;
    expect(wireReach(star)).toEqual({ unknown: 'the two ends of the bus: it is no single chain' });
  });
});

describe('the way there and back on CAN', () => {
  // With all of 87.5 % for propagation and transceivers of 255 ns, at 5 ns/m: computed from Microchip DS70005340A, eq. 5 to 9.
  it.each([
    [1e6, 36],
    [5e5, 124],
    [2.5e5, 299],
  ])('leaves %f bit/s a line of %i m', (rate, length) => {
    const longest = longestByPropagation(seconds(1 / rate), usualLoopDelay, ratio(0.875), 5e-9);
    expect(Math.floor(longest)).toBe(length);
  });

  it('is that of the two devices between which it takes longest, isolators counted', () => {
    // 5 ns/m.
    const cable = testCable({ velocity: ratio(1 / (5e-9 * speedOfLight)) });
    const { study } = busOf('can', { cable, rate: 500_000 })
      .from('a', { device: canDevice({ delay: seconds(200e-9) }) })
      .to('b', 20, { device: canDevice({ delay: seconds(200e-9) }) })
      .tap('isolated', 1, { device: canDevice({ delay: seconds(400e-9) }) })
      .to('c', 10, { device: canDevice({ delay: seconds(150e-9) }) })
      .built();
    const found = propagation(study);
    if (isUnknown(found) || !found) throw new Error('nothing was found');
    expect([found.from.name, found.to.name].sort()).toEqual(['a', 'isolated']);
    expect(found.time).toBeCloseTo(200e-9 + 400e-9 + 2 * 21 * 5e-9, 12);
    expect(found.slack).toBeCloseTo(0.875 * 2e-6 - found.time, 12);
  });

  it('of 40 ns of isolator costs 8 m of line', () => {
    const longest = (loop: number) => longestByPropagation(seconds(1e-6), seconds(loop), ratio(0.875), 5e-9);
    expect(longest(255e-9) - longest(295e-9)).toBeCloseTo(8, 9);
  });

  it('is unknown without a rate or a velocity', () => {
    const { velocity: _, capacitance: __, ...cable } = testCable();
    expect(propagation(busOf('can').from('a').to('b', 5).built().study)).toEqual({ unknown: 'the rate of the bus' });
    expect(propagation(busOf('can', { cable, rate: 1e6 }).from('a').to('b', 5).built().study)).toEqual({
      unknown: 'the velocity of cable TestPair',
    });
  });
});

describe('what a meter reads on CAN', () => {
  it('is 53.2 ohm with 64 nodes of 30 kohm on two terminators, whatever their unit loads', () => {
    // 60 ohm in parallel with 30 kohm / 64: Kirchhoff.
    const device = canDevice({ resistance: ohms(30_000) });
    const bus = busOf('can').from('n1', { device, terminate: 120 });
    for (let node = 2; node < 64; node++) bus.to(`n${node}`, 1e-6, { device });
    const { study } = bus.to('n64', 1e-6, { device, terminate: 120 }).built();
    expect(nominal(study.meter[0])).toBeCloseTo(53.19, 2);
  });

  it('lies between nodes that draw the most they may and none, where their resistance is unsaid', () => {
    const device = canDevice();
    const { study } = busOf('can')
      .from('a', { device, terminate: 120 })
      .to('b', 1e-6, { device, terminate: 120 })
      .built();
    const meter = study.meter[0]!;
    if (isUnknown(meter)) throw new Error(meter.unknown);
    expect(meter.nominal).toBeCloseTo(1 / (1 / 60 + 2 / 20_000), 3);
    // Terminators 5 % up, nodes away, half a per cent and 0.2 ohm of the meter.
    expect(meter.high).toBeCloseTo(63 * 1.005 + 0.2, 3);
  });

  it('is twice as much with one terminator missing', () => {
    const device = canDevice({ resistance: ohms(1e9) });
    const { study } = busOf('can').from('a', { device, terminate: 120 }).to('b', 0, { device }).built();
    expect(nominal(study.meter[1])).toBeCloseTo(120, 3);
  });

  it('says that a driver works into too little', () => {
    const device = canDevice();
    const { study } = busOf('can').from('a', { device, terminate: 60 }).to('b', 0, { device, terminate: 60 }).built();
    expect(study.driven[0]).toMatchObject({ unknown: expect.stringContaining('45 ohm') });
  });

  it('knows the levels of a bus with a single landing, and of none', () => {
    expect(busOf('can').built().study.driven).toEqual([]);
    expect(busOf('can').from('a', { device: canDevice() }).built().study.driven).toHaveLength(1);
  });
});
