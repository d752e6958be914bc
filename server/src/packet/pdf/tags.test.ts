import { describe, expect, it } from 'vitest';
import { tablesOf } from '../layout.js';
import { packetPdf } from '../pdf.js';
import { readParts } from '../testing/pdf-parts.js';
import { hostileStore, packetOf, plainStore } from '../testing/stores.js';

describe('the parts of a packet as a PDF', () => {
  it('are told apart: headings in order, tables with head cells, lists, drawings with words', async () => {
    const packet = packetOf(plainStore);
    const { document, withRole, textOf } = await readParts((await packetPdf(packet)).bytes);
    const marks = (await document.getMarkInfo()) as unknown as ReadonlyMap<string, boolean>;
    expect(marks.get('Marked')).toBe(true);
    const { info } = await document.getMetadata();
    expect(info).toMatchObject({ Title: 'Northgate Market: installer\u2019s packet', Language: 'en' });

    expect(withRole('H1').map(textOf)).toEqual(['Installer\u2019s packet']);
    expect(withRole('H2').map(textOf)).toEqual([
      'Contents',
      'One-line diagram: Cases',
      'Pull and cut list: Cases',
      'Landing schedule: Cases',
      'Address table: Cases',
      'Commissioning: Cases',
      'Parts list',
    ]);
    const tables = tablesOf(packet).map(({ table }) => table);
    expect(withRole('Caption').map(textOf)).toEqual(tables.map(({ title }) => title));
    const heads = tables.flatMap(({ rows, columns }) => (rows.length === 0 ? [] : columns.map(({ head }) => head)));
    expect(withRole('TH').map((cell) => textOf(cell).split(',')[0])).toEqual(heads.map((head) => head.split(',')[0]));
    const steps = packet.sheets.flatMap(({ blocks }) =>
      blocks.flatMap((block) => (block.kind === 'steps' ? block.steps : [])),
    );
    const items = withRole('LBody').map(textOf);
    for (const step of steps) expect(items).toContain(step);
    const pictures = withRole('Figure').map(({ alt }) => alt);
    expect(pictures).toContain('tens 1, ones 1');
    expect(pictures.some((alt) => alt?.includes('Cases'))).toBe(true);
    expect(pictures.every((alt) => alt !== undefined && alt !== '')).toBe(true);
  });

  it('leave no text that belongs to nothing, whatever the names and however long the tables', async () => {
    for (const store of [plainStore, hostileStore]) {
      const { outside, withRole } = await readParts((await packetPdf(packetOf(store))).bytes);
      expect(outside).toEqual([]);
      expect(withRole('TR').length).toBeGreaterThan(10);
    }
  });
});
