import { describe, expect, it } from 'vitest';
import { busOf, headDevice, testCable } from '../../testing/network.js';
import { createStudy } from '../study.js';
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

  it('says first that part of the text is missing from its figures', () => {
    const { store, bus, study } = chain('modbus-rtu').built();
    const first = (made: typeof study) => busPage(made).lines[0];
    expect(first(createStudy(store, { ...bus, damaged: true }))).toMatch(/^incomplete +part of its text was not/);
    expect(first(createStudy(store, { ...bus, unclear: true }))).toMatch(/^incomplete +part of its text was not/);
    expect(first(study)).toMatch(/^kind /);
  });

  it('says by how much the slowest answer on CAN misses the sample', () => {
    const line = (length: number) =>
      busPage(busOf('can', { rate: 1e6 }).from('a').to('b', length).built().study).lines.find((text) =>
        text.startsWith('slowest answer'),
      );
    expect(line(10)).toMatch(/ \d+ ns before the sample$/);
    // 100 m there and back at 66 % of the speed of light are 1.01 us, and a bit is sampled at 875 ns.
    expect(line(100)).toMatch(/ \d+ ns after the sample$/);
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
