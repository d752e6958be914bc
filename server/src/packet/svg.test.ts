import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { expect, it } from 'vitest';
import { svgFile } from './svg.js';
import { packetSvgs } from './svg-files.js';
import { hostileNames, hostileStore, packetOf, plainStore } from './testing/stores.js';

const parser = new XMLParser({ ignoreAttributes: false, processEntities: true, htmlEntities: true });

it('is well-formed XML, whatever the texts in it say', () => {
  const shapes = hostileNames.map(
    (text) => ({ shape: 'text', look: 'value', x: 0, y: 0, size: 10, text, anchor: 'start', bold: false }) as const,
  );
  const file = svgFile({ width: 10, height: 10, shapes, description: hostileNames.join(' ') });
  expect(XMLValidator.validate(file)).toBe(true);
  const { svg } = parser.parse(file);
  expect(Object.keys(svg).filter((key) => !key.startsWith('@_'))).toEqual(['title', 'style', 'rect', 'text']);
  expect(svg.text).toHaveLength(hostileNames.length);
});

it('draws each shape of a dial', () => {
  const cells = packetOf(plainStore).sheets.flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.kind === 'table' ? block.table.rows.flatMap((row) => row.cells) : [])),
  );
  const [dial] = cells.flatMap((cell) => (cell.kind === 'picture' ? cell.picture : []));
  const { svg } = parser.parse(svgFile(dial!));
  expect(svg.title).toBe('tens 1, ones 1');
  expect([svg.circle.length, svg.path.length, svg.text.length]).toEqual([2, 2, 4]);
});

it('has files that say, each alone, what every page of a packet says', () => {
  for (const store of [plainStore, hostileStore]) {
    const packet = packetOf(store, { revision: '3f2a91bc04' });
    const files = packetSvgs(packet);
    expect(files).toHaveLength(1);
    for (const { text } of files) {
      expect(XMLValidator.validate(text)).toBe(true);
      const { svg } = parser.parse(text);
      const words = svg.text.map((one: { '#text': unknown }) => one['#text']).join(' ');
      expect(words).toContain('revision 3f2a91bc04, 2026-03-14');
      expect(words).toMatch(/De-energise, lock out, prove dead.*A plan, not an approval\./);
      const lowest = Math.max(...svg.text.map((one: { '@_y': string }) => Number(one['@_y'])));
      expect(lowest).toBeLessThan(Number(svg['@_height']));
    }
  }
});
