import { describe, expect, it } from 'vitest';
import { bitsPerSecond } from '../quantity.js';
import { busOf, testDevice } from '../testing/network.js';
import { firstLengthLimit } from './length.js';
import { settableRates, slowerRates, usualRates } from './rates.js';

const setTo = (...rates: readonly number[]) => testDevice('Any', { rates: rates.map(bitsPerSecond) });

describe('rates', () => {
  it('fall, and end on Modbus and MS/TP at 115,200 bit/s (MODBUS over Serial Line V1.02, 3.2; ASHRAE 135 from memory)', () => {
    for (const kind of ['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485', 'can'] as const) {
      const rates = usualRates(kind);
      expect(rates.length, kind).toBeGreaterThan(5);
      expect(rates.toSorted((left, right) => right - left)).toEqual(rates);
    }
    for (const kind of ['modbus-rtu', 'bacnet-mstp'] as const) expect(usualRates(kind)[0]).toBe(115_200);
    expect(usualRates('contact-loop')).toEqual([]);
  });

  it('are offered where every port takes them', () => {
    const bus = busOf('modbus-rtu', { rate: 38_400 })
      .from('a', { device: setTo(9600, 19_200, 38_400) })
      .to('b', 10, { device: setTo(19_200, 38_400, 57_600) })
      .to('c', 10)
      .built().bus;
    expect(settableRates(bus)).toEqual([38_400, 19_200]);
    expect(slowerRates(bus)).toEqual([19_200]);
  });
});

describe('the first length limit of a growing bus', () => {
  const limitAt = (rate: number) => firstLengthLimit(busOf('rs485', { rate }).from('a').to('b', 10).built().study);

  it("is the kind's own at slow rates, and 10^8 m bit/s above (TIA/EIA-422-B annex A.1.1)", () => {
    expect(limitAt(19_200)?.value).toBeCloseTo(1219.2, 1);
    expect(limitAt(115_200)?.value).toBeCloseTo(868.06, 1);
    expect(limitAt(115_200)?.meaning).toBe('what guidance gives at 115.2 kbit/s');
  });
});
