import { XMLParser } from 'fast-xml-parser';
import { strFromU8, unzipSync } from 'fflate';
import readXlsxFile from 'read-excel-file/node';
import { describe, expect, it } from 'vitest';
import { tablesOf } from './layout.js';
import { hostileNames, hostileStore, packetOf, plainStore } from './testing/stores.js';
import { packetXlsx } from './xlsx.js';

const parser = new XMLParser({ ignoreAttributes: false });
const partsOf = (bytes: Uint8Array) =>
  new Map(Object.entries(unzipSync(bytes)).map(([name, content]) => [name, strFromU8(content)]));

describe('a packet as a workbook', () => {
  it('is read by another library with the sheets, heads, texts and numbers that it should have', async () => {
    const packet = packetOf(plainStore, { unit: 'ft' });
    const sheets = await readXlsxFile(Buffer.from(await packetXlsx(packet)));
    expect(sheets.map(({ sheet }) => sheet)).toEqual([
      'Packet',
      'Buses',
      'Runs of Cases',
      'Landings of Cases in walking or',
      'Addresses of Cases',
      'Readings of Cases',
      'Devices',
      'Cable',
      'Resistors, splices and earths',
    ]);
    const runs = sheets[2]!.data;
    expect(runs[0]!.slice(0, 7)).toEqual(['Run', 'From', 'To', 'Cable', 'Planned (ft)', 'Cut (ft)', 'Built (ft)']);
    expect(runs[2]!.slice(0, 7)).toEqual([2, 'caseA', 'caseB', '22 AWG pair', 12.5, 20, 14]);
    expect(runs).toHaveLength(1 + 2 + 1);
    for (const [index, { table }] of tablesOf(packet).entries()) {
      expect(sheets[index + 1]!.data, table.title).toHaveLength(1 + table.rows.length);
    }
  });

  it('keeps its heads in view and on every printed page, across one page of the paper', async () => {
    const parts = partsOf(await packetXlsx(packetOf(plainStore, { paper: 'a4' })));
    const { worksheet } = parser.parse(parts.get('xl/worksheets/sheet3.xml')!);
    expect(worksheet.sheetViews.sheetView.pane).toMatchObject({ '@_ySplit': '1', '@_state': 'frozen' });
    // ECMA-376 part 1, 18.3.1.63: paper 9 is A4.
    expect(worksheet.pageSetup).toMatchObject({
      '@_paperSize': '9',
      '@_orientation': 'landscape',
      '@_fitToWidth': '1',
    });
    expect(worksheet.headerFooter.oddFooter).toMatch(/&amp;P of &amp;N|&P of &N/);
    expect(parts.get('xl/workbook.xml')).toMatch(/_xlnm\.Print_Titles[^<]*>[^<]*\$1:\$1/);
  });

  it('holds no formula and nothing that is fetched, whatever the names say', async () => {
    const bytes = await packetXlsx(packetOf(hostileStore));
    const parts = partsOf(bytes);
    for (const [name, text] of parts) {
      if (name.startsWith('xl/worksheets/sheet')) expect(text, name).not.toMatch(/<f[ >]|<hyperlink/);
      if (name.endsWith('.rels')) expect(text, name).not.toMatch(/TargetMode="External"/);
      expect(() => parser.parse(text, true), name).not.toThrow();
    }
    const sheets = await readXlsxFile(Buffer.from(bytes));
    const texts = JSON.stringify(sheets);
    for (const name of hostileNames.slice(0, 6)) expect(texts).toContain(JSON.stringify(name).slice(1, -1));
  });

  it('names its sheets as spreadsheets allow', async () => {
    for (const { sheet } of await readXlsxFile(Buffer.from(await packetXlsx(packetOf(hostileStore))))) {
      expect(sheet).toMatch(/^[^[\]:*?/\\']{1,31}$/);
    }
  });

  it('is the same bytes for the same packet', async () => {
    const [one, other] = [await packetXlsx(packetOf(plainStore)), await packetXlsx(packetOf(plainStore))];
    expect(Buffer.compare(one, other)).toBe(0);
  });
});
