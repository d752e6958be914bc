import { describe, expect, it } from 'vitest';
import { busOf, headDevice, testCable } from '../../testing/network.js';
import { busPage } from './bus-page.js';
import { ohmsText } from './words.js';

const chain = (kind: Parameters<typeof busOf>[0]) =>
  busOf(kind, { rate: 9600 })
    .from('head', { device: headDevice, terminate: 120 })
    .to('caseA', 100, { address: 11, terminate: 120 });

describe('the page of a bus', () => {
  it('has its facts, its limits with numbered documents, and a row for each landing', () => {
    const { heading, lines } = busPage(chain('modbus-rtu').bias('head', 510).built().study);
    expect(heading).toBe('testStore, bus tested');
    expect(lines).toContain('length           100 m');
    expect(lines.some((line) => /^length +100 m +at most 1,000 m +10 % +\[1\]$/.test(line))).toBe(true);
    expect(lines.some((line) => /^\[1\] MODBUS over Serial Line V1\.02, 3\.4\.3$/.test(line))).toBe(true);
    expect(lines.some((line) => /^caseA +11 +100 m +\d/.test(line))).toBe(true);
    expect(lines.every((line) => line === line.trimEnd())).toBe(true);
  });

  it('tells once why a figure is unknown, and leaves out a column that is unknown everywhere', () => {
    const cable = testCable();
    const { gauge: _, ...bare } = cable;
    const { lines } = busPage(
      busOf('modbus-rtu', { rate: 9600, cable: bare })
        .from('head', { device: headDevice, terminate: 120 })
        .to('caseA', 100, { terminate: 120 })
        .built().study,
    );
    const [row = ''] = lines.filter((line) => line.startsWith('landing '));
    expect(row.split(/ {2,}/)).toEqual(['landing', 'address', 'distance', 'idle', 'delay']);
    expect(lines.filter((line) => line.startsWith('meter, driven unknown: '))).toHaveLength(1);
  });

  it('shows nothing that a terminal would act on', () => {
    const { lines } = busPage(busOf('can').from('a\u001b[31m').to('b\u202e', 5).built().study);
    for (const sign of ['\u001b', '\u202e']) expect(lines.join('')).not.toContain(sign);
  });
});

it('a range names its unit once where both ends have it', () => {
  const range = (nominal: number, low: number, high: number) => ohmsText({ nominal, low, high } as never);
  expect(range(61.8, 60.1, 63.4)).toBe('61.8 ohm (60.1 to 63.4 ohm)');
  expect(range(9900, 9000, 10_500)).toBe('9,900 ohm (9,000 ohm to 10.5 kohm)');
  expect(range(60, 60, Number.POSITIVE_INFINITY)).toBe('60 ohm (60 ohm to open)');
  expect(range(60, 60, 60)).toBe('60 ohm');
});
