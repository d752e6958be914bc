import { describe, expect, it } from 'vitest';
import { isUnknown, type Known, type Range } from '../known.js';
import type { Volts } from '../quantity.js';
import { busOf, headDevice, testDevice } from '../testing/network.js';

const level = (known: Known<Range<Volts>> | undefined): Range<Volts> => {
  if (!known || isUnknown(known)) throw new Error(known?.unknown ?? 'no level');
  return known;
};

/** Two ends without cable between them, `loads` unit loads together. */
const biased = (resistor: number, near: number, far: number | undefined, loads: number, supply: number) => {
  const device = testDevice('Any', { unitLoad: loads / 2 }, { role: 'head' });
  return busOf('rs485')
    .from('near', { device, terminate: near })
    .to('far', 0, { device, ...(far !== undefined && { terminate: far }) })
    .bias('near', resistor, resistor, supply)
    .built().study;
};

describe('the idle level', () => {
  /** mV by Kirchhoff's law, Vs / V = 1 + RB (n / 12000 + 2 G). */
  const table = [
    [450, 313, 276, 335, 588],
    [510, 278, 245, 298, 526],
    [560, 254, 224, 273, 484],
    [620, 231, 204, 248, 441],
    [650, 221, 195, 237, 423],
  ] as const;
  it.each(table)('of bias 2 x %i ohm: %i, %i, %i and %i mV', (resistor, unloaded, loaded, wide, single) => {
    const millivolts = (study: ReturnType<typeof biased>) => 1000 * level(study.idle[0]).nominal;
    expect(Math.abs(millivolts(biased(resistor, 120, 120, 0, 5)) - unloaded)).toBeLessThan(0.51);
    expect(Math.abs(millivolts(biased(resistor, 120, 120, 32, 4.75)) - loaded)).toBeLessThan(0.51);
    expect(Math.abs(millivolts(biased(resistor, 150, 150, 32, 4.75)) - wide)).toBeLessThan(0.51);
    expect(Math.abs(millivolts(biased(resistor, 120, undefined, 0, 5)) - single)).toBeLessThan(0.51);
  });

  it('of the application report SLLA272 (from memory): 523 ohm, 135.6 and 120 ohm, 32 unit loads, 4.75 V give 252.3 mV', () => {
    expect(1000 * level(biased(523, 135.6, 120, 32, 4.75).idle[0]).nominal).toBeCloseTo(252.3, 1);
    expect(1000 * level(biased(523, 120, 120, 32, 4.75).idle[0]).nominal).toBeCloseTo(239.6, 1);
  });

  it('of a trade handbook (from memory): ten nodes, two 120 ohm, 2 x 685 ohm, 5 V give 200 mV', () => {
    expect(1000 * level(biased(685, 120, 120, 10, 5).idle[0]).nominal).toBeCloseTo(200, -1);
  });

  it('of two sets of 510 ohm on an MS/TP segment without loads is 526 mV', () => {
    const device = testDevice('Any', { unitLoad: 0 });
    const { study } = busOf('bacnet-mstp')
      .from('a', { device, terminate: 120 })
      .to('b', 0, { device, terminate: 120 })
      .bias('a', 510)
      .bias('b', 510)
      .built();
    expect(1000 * level(study.idle[0]).nominal).toBeCloseTo(526, 0);
  });

  it('falls towards the far end by the loop resistance: V far = V near * RT / (RT + R loop)', () => {
    const device = testDevice('Any', { unitLoad: 0 });
    const { study } = busOf('rs485')
      .from('near', { device, terminate: 120 })
      .to('far', 500, { device, terminate: 120 })
      .bias('near', 560)
      .built();
    const loop = 1000 * 0.0529;
    expect(level(study.idle[1]).nominal / level(study.idle[0]).nominal).toBeCloseTo(120 / (120 + loop), 3);
  });

  it('is 0 without bias, and on an island that the bias does not reach', () => {
    const none = { nominal: 0, low: 0, high: 0 };
    expect(busOf('rs485').from('a').to('b', 9).built().study.idle).toEqual([none, none]);
    expect(busOf('rs485').from('a').to('b', 9).from('c').bias('a', 560).built().study.idle[2]).toEqual(none);
  });

  it('is seen reversed at a crossed landing, whose own bias pulls the pair down', () => {
    const words = { device: testDevice('Any', { unitLoad: 0 }), terminate: 120 };
    const crossed = busOf('rs485')
      .from('a', words)
      .to('b', 0, { ...words, crossed: true });
    const { study } = crossed.bias('a', 560).built();
    expect(level(study.idle[0]).nominal).toBeCloseTo(0.254, 3);
    expect(level(study.idle[1]).nominal).toBeCloseTo(-0.254, 3);
    const opposed = busOf('rs485')
      .from('a', words)
      .to('b', 0, { ...words, crossed: true })
      .bias('a', 560)
      .bias('b', 560);
    const { nominal, low, high } = level(opposed.built().study.idle[0]);
    expect(nominal).toBeCloseTo(0, 9);
    expect(low).toBeLessThan(-0.01);
    expect(high).toBeGreaterThan(0.01);
  });
});

describe('the driven level', () => {
  it('is 1.5 V at the head and what the loop leaves at the end: 120 / (120 + R loop)', () => {
    const device = testDevice('Any', { unitLoad: 0 });
    const { study } = busOf('rs485')
      .from('head', { device: { ...headDevice, ports: device.ports }, terminate: 120 })
      .to('far', 1000, { device, terminate: 120 })
      .built();
    expect(level(study.driven[0]).nominal).toBeCloseTo(1.5, 9);
    expect(level(study.driven[1]).nominal).toBeCloseTo((1.5 * 120) / (120 + 105.9), 2);
  });

  it('is unknown without a head, and where the driver works into less than 54 ohm', () => {
    expect(busOf('rs485').from('a').built().study.driven).toEqual([{ unknown: 'which device is the head' }]);
    const { study } = busOf('rs485').from('h', { device: headDevice, terminate: 40 }).built();
    expect(study.driven[0]).toEqual({ unknown: expect.stringContaining('54 ohm') });
  });
});
