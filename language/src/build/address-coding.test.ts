import { describe, expect, it } from 'vitest';
import { projectOf } from '../testing/check-text.js';

const store = (address: string) => `device Box { port field : rs485 { address ${address} } }
cable Pair { conductor 22 AWG }
store s { bus b : modbus-rtu on Pair { from a : Box address 1 } }`;

function readAddress(address: string) {
  const project = projectOf({ 's.pair': store(address) });
  const inDevice = store(address).indexOf('cable');
  const findings = project.check().findings.filter(({ place }) => place.start < inDevice);
  return {
    setting: project.storesOf('s.pair')[0]?.buses[0]?.landings[0]?.port?.address,
    findings: findings.map(({ rule, message }) => `${rule}: ${message}`),
  };
}

describe('the coding of an address', () => {
  it('is what follows the range', () => {
    expect(readAddress('switches 1..127 of 8 least-first up-is-on')).toEqual({
      setting: { means: 'switches', low: 1, high: 127, positions: 8, first: 'least', on: 'up' },
      findings: [],
    });
    expect(readAddress('dial 0..255 of 2 hexadecimal').setting).toEqual({
      means: 'dial',
      low: 0,
      high: 255,
      positions: 2,
      hexadecimal: true,
    });
    expect(readAddress('dial 1..99').setting).toEqual({ means: 'dial', low: 1, high: 99 });
  });

  it('is refused where it cannot be', () => {
    expect(readAddress('dial 1..99 up-is-on').findings).toEqual([
      expect.stringContaining('unknown-word: up-is-on is no way to read an address that is set by dial'),
    ]);
    expect(readAddress('switches 1..127 of 6').findings).toEqual([
      expect.stringContaining('value-impossible: 6 switches cannot show 127'),
    ]);
    expect(readAddress('switches 1..127 of 6').setting).toEqual({ means: 'switches', low: 1, high: 127 });
    expect(readAddress('dial 1..99 of -2').findings).toHaveLength(1);
  });
});
