import { describe, expect, it } from 'vitest';
import { ohms } from '../quantity.js';
import { busOf, nodeDevice, testCable } from '../testing/network.js';
import { lengthLimit } from './length.js';
import { leastDriverLoad } from './level.js';
import { severityOf } from './limit.js';
import { biasLimit, loadLimit } from './load.js';

const busWith = (kind: Parameters<typeof busOf>[0], rate: number | undefined, gauge = 22) =>
  busOf(kind, { cable: testCable({ gauge }), ...(rate !== undefined && { rate }) })
    .from('a')
    .to('b', 5)
    .built();

describe('the length limit', () => {
  it('of Modbus is 1000 m up to 9600 bit/s on 26 AWG or thicker (MODBUS over Serial Line V1.02, 3.4.3)', () => {
    expect(lengthLimit(busWith('modbus-rtu', 9600, 26).study)).toMatchObject({ value: 1000, strength: 'required' });
  });

  it('of Modbus is only guidance where the guide gives no number: faster, thinner, or of unsaid rate', () => {
    for (const bus of [
      busWith('modbus-rtu', 19_200),
      busWith('modbus-rtu', 9600, 28),
      busWith('modbus-rtu', undefined),
    ]) {
      expect(lengthLimit(bus.study)).toMatchObject({ value: expect.closeTo(1219.2, 6), strength: 'guidance' });
    }
  });

  it('of Modbus on category cable is 600 m (V1.02, 3.6)', () => {
    const cable = testCable({ pairs: 4, gauge: 24, impedance: ohms(100) });
    const { study } = busOf('modbus-rtu', { cable, rate: 9600 }).from('a').to('b', 5).built();
    expect(lengthLimit(study)).toMatchObject({ value: 600, strength: 'guidance' });
  });

  it('of MS/TP and the other RS-485 kinds is guidance, and no other kind has one here', () => {
    for (const kind of ['bacnet-mstp', 'rs485', 'peer-485'] as const) {
      expect(lengthLimit(busWith(kind, 38_400).study)?.strength).toBe('guidance');
    }
    expect(lengthLimit(busWith('ethernet', undefined).study)).toBeUndefined();
  });
});

describe('the load limit', () => {
  const biased = (kind: Parameters<typeof busOf>[0]) =>
    busOf(kind).from('a', { device: nodeDevice }).bias('a', 560).built().bus;

  it('is 32 unit loads (TIA-485-A), and 4 fewer on Modbus that is biased (V1.02, 3.4.6)', () => {
    expect(loadLimit(busWith('modbus-rtu', 9600).bus)?.value).toBe(32);
    expect(loadLimit(biased('modbus-rtu'))?.value).toBe(28);
    expect(loadLimit(biased('rs485'))?.value).toBe(32);
    expect(loadLimit(biased('can'))).toBeUndefined();
    expect(loadLimit(biased(undefined))).toBeUndefined();
  });

  it('leaves the driver 54 ohm: 32 unit loads beside two 120 ohm', () => {
    const across = 1 / (2 / 120 + 32 / 24_000);
    expect(leastDriverLoad.value).toBeLessThan(across);
    expect(across).toBeLessThan(leastDriverLoad.value * 1.05);
  });
});

describe('places of bias', () => {
  it('are one on Modbus (V1.02, 3.4.6), two on MS/TP from memory, and nowhere limited else', () => {
    expect(biasLimit('modbus-rtu')).toMatchObject({ value: 1, strength: 'required' });
    expect(biasLimit('bacnet-mstp')).toMatchObject({ value: 2, strength: 'from memory' });
    expect(biasLimit('rs485')).toBeUndefined();
  });
});

it('only a required limit is broken by an error', () => {
  const limit = { value: 1, meaning: '', source: '' };
  expect(severityOf({ ...limit, strength: 'required' })).toBe('error');
  expect(severityOf({ ...limit, strength: 'guidance' })).toBe('warning');
  expect(severityOf({ ...limit, strength: 'from memory' })).toBe('warning');
});
