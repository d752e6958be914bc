import { describe, expect, it } from 'vitest';
import { isUnknown, type Known } from '../known.js';
import { faradsPerMetre, ohms } from '../quantity.js';
import { busOf, headDevice, testCable, testDevice } from '../testing/network.js';
import { createStudy } from './study.js';

const known = <T>(value: Known<T> | undefined): T => {
  if (value === undefined) throw new Error('nothing is there');
  if (isUnknown(value)) throw new Error(value.unknown);
  return value;
};

describe('a study', () => {
  it('sums all runs but spare ones, taps too, and takes the built length where there is one', () => {
    const { study } = busOf('rs485')
      .from('a')
      .to('b', 10, { built: 12 })
      .tap('c', 3)
      .to('d', 5, { spare: true })
      .built();
    expect(study.length).toBe(15);
  });

  it('measures the loop along the trunk alone', () => {
    const { study } = busOf('rs485').from('a').to('b', 100).tap('c', 30).to('d', 200).built();
    // 22 AWG: 52.96 ohm/km (NBS Handbook 100).
    expect(known(study.loopResistance).nominal).toBeCloseTo(600 * 0.05296, 1);
  });

  it('knows no loop without two ends, or on a cable of unknown conductor', () => {
    expect(busOf('rs485').from('a').to('b', 5).to('a', 5).built().study.loopResistance).toEqual({
      unknown: 'the two ends of the bus: it is no single chain',
    });
    const { gauge: _, ...bare } = testCable();
    expect(busOf('rs485', { cable: bare }).from('a').to('b', 5).built().study.loopResistance).toEqual({
      unknown: 'the conductor of cable TestPair',
    });
  });

  it('is warmer by 0.393 % of resistance a kelvin when the bus is', () => {
    const at = (ambient: number) =>
      known(busOf('rs485', { ambient }).from('a').to('b', 100).built().study.loopResistance).nominal;
    expect(at(40) / at(20)).toBeCloseTo(1.0786, 4);
  });

  it('finds the heads', () => {
    const { study } = busOf('rs485')
      .from('a')
      .to('h', 1, { device: headDevice })
      .to('h2', 1, { device: headDevice })
      .built();
    expect(study.head?.name).toBe('h');
    expect(study.heads.map(({ name }) => name)).toEqual(['h', 'h2']);
  });

  it('names each device once that states no load', () => {
    const { unitLoad: _, ...port } = testDevice('Mute').ports[0]!;
    const mute = { ...testDevice('Mute'), ports: [port] };
    const { study } = busOf('rs485')
      .from('a', { device: mute })
      .to('b', 1, { device: mute })
      .to('c', 1, { device: null })
      .built();
    expect(study.unitLoads).toEqual({ unknown: 'the unit load of Mute and c' });
    expect(known(busOf('rs485').from('s', { splice: true }).to('a', 1).built().study.unitLoads)).toBe(0.125);
  });

  it('times the wave by velocity, or by impedance and capacitance: 120 ohm and 42 pF/m make 0.66 c', () => {
    const { velocity: _, ...cable } = testCable({ impedance: ohms(120), capacitance: faradsPerMetre(42.12e-12) });
    const delayOn = (differing: typeof cable) =>
      known(busOf('rs485', { cable: differing }).from('a').to('b', 1000).built().study.delay[1]);
    expect(delayOn(testCable())).toBeCloseTo(1000 / (0.66 * 299_792_458), 12);
    expect(delayOn(cable)).toBeCloseTo(1000 / (0.66 * 299_792_458), 9);
    const { capacitance: __, ...mute } = cable;
    expect(busOf('rs485', { cable: mute }).from('a').to('b', 1).built().study.delay[1]).toEqual({
      unknown: 'the velocity of cable TestPair',
    });
  });

  it('times no wave to an island', () => {
    expect(busOf('rs485').from('a').to('b', 1).from('c').built().study.delay[2]).toEqual({
      unknown: 'the way from a: nothing joins them',
    });
  });

  it('knows the bit time of a rate', () => {
    expect(busOf('rs485', { rate: 19_200 }).from('a').built().study.bitTime).toBeCloseTo(52.083e-6, 9);
    expect(busOf('rs485').from('a').built().study.bitTime).toEqual({ unknown: 'the rate of the bus' });
  });

  it('shows lengths in the unit of the text or of the reader', () => {
    const { store, bus, study } = busOf('rs485', { lengthUnit: 'ft' }).from('a').to('b', 30.48).built();
    expect(study.lengthText(study.length)).toBe('100 ft');
    expect(createStudy(store, bus, { lengthUnit: 'm' }).lengthText(study.length)).toBe('30.5 m');
  });

  it('stays upright on lengths of 0 and of 1e308 m, and on a thousand loops', () => {
    const { study } = busOf('rs485')
      .from('a', { terminate: 120 })
      .to('b', 0)
      .to('c', 1e308)
      .to('d', 1e308, { terminate: 120 })
      .bias('a', 560)
      .built();
    for (const { nominal } of study.meter.map(known)) expect(nominal).toBeGreaterThan(0);
    for (const { nominal } of study.idle.map(known)) expect(Number.isFinite(nominal)).toBe(true);
    const looped = busOf('rs485').from('n0');
    for (let index = 1; index <= 1000; index++)
      looped
        .to(`n${index}`, 1)
        .to(`n${index - 1}`, 1)
        .from(`n${index}`);
    expect(looped.built().study.meter[0]).toEqual({ unknown: 'the levels of a bus with 1000 loops, more than 500' });
  });
});
