import { describe, expect, it } from 'vitest';
import { packetCsv } from './csv.js';
import { hostileStore, packetOf, plainStore } from './testing/stores.js';

/** Fields of RFC 4180. */
function fieldsOf(text: string): string[][] {
  const rows: string[][] = [[]];
  for (const [, quoted, plain, end] of text.matchAll(/(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/g)) {
    rows.at(-1)!.push(quoted?.replaceAll('""', '"') ?? plain ?? '');
    if (end === '\r\n') rows.push([]);
  }
  return rows.slice(0, -1);
}

describe('a packet as CSV', () => {
  it('has a file for each table, with a head and a row for each row that is no sum', () => {
    const files = new Map(
      packetCsv(packetOf(plainStore, { unit: 'both' })).map(({ name, text }) => [name, fieldsOf(text)]),
    );
    expect([...files.keys()]).toEqual([
      'installer-s-packet-buses.csv',
      'pull-and-cut-list-cases.csv',
      'landing-schedule-cases.csv',
      'address-table-cases.csv',
      'commissioning-cases.csv',
      'parts-list-devices.csv',
      'parts-list-cable.csv',
      'parts-list-resistors-splices-and-earths.csv',
    ]);
    expect(files.get('pull-and-cut-list-cases.csv')).toEqual([
      [
        'Run',
        'From',
        'To',
        'Cable',
        'Planned (ft)',
        'Planned (m)',
        'Cut (ft)',
        'Cut (m)',
        'Built (ft)',
        'Built (m)',
        'Mind',
        'Pulled',
      ],
      ['1', 'head', 'caseA', '22 AWG pair', '38', '11.58', '46', '14.02', '', '', '', ''],
      ['2', 'caseA', 'caseB', '22 AWG pair', '12.5', '3.81', '20', '6.1', '14', '4.27', '', ''],
    ]);
  });

  it('has no cell that a spreadsheet takes for a formula, and as many fields in each row', () => {
    for (const { text } of packetCsv(packetOf(hostileStore))) {
      const [head, ...rows] = fieldsOf(text);
      for (const row of rows) {
        expect(row).toHaveLength(head!.length);
        for (const field of row) if (Number.isNaN(Number(field))) expect(field).not.toMatch(/^[=+\-@\t\r]/);
      }
    }
  });

  it('gives its files names that are safe, and differ', () => {
    const names = packetCsv(packetOf(hostileStore)).map(({ name }) => name);
    for (const name of names) expect(name).toMatch(/^[\p{L}\p{M}\p{N}_-]+\.csv$/u);
    expect(new Set(names).size).toBe(names.length);
  });
});
