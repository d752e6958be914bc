import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { expect, it } from 'vitest';
import { svgFile } from './svg.js';
import { hostileNames, packetOf, plainStore } from './testing/stores.js';

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
