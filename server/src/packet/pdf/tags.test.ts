import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { tablesOf } from '../layout.js';
import { packetPdf } from '../pdf.js';
import { hostileStore, packetOf, plainStore } from '../testing/stores.js';

/** As pdfjs gives them: an element with its parts, or a piece of what a page shows. */
interface Node {
  readonly role?: string;
  readonly alt?: string;
  readonly type?: string;
  readonly id?: string;
  readonly children?: readonly Node[];
}

function* nodesIn(node: Node): Generator<Node> {
  yield node;
  for (const child of node.children ?? []) yield* nodesIn(child);
}

async function readTags(bytes: Uint8Array) {
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const all: Node[] = [];
  const texts = new Map<string, string>();
  const outside: string[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    all.push(...nodesIn((await page.getStructTree()) as Node));
    const { items } = await page.getTextContent({ includeMarkedContent: true });
    const marks: (string | undefined)[] = [];
    let isArtifact = 0;
    for (const item of items) {
      if ('str' in item) {
        const mark = marks.findLast((one) => one !== undefined);
        if (mark !== undefined) texts.set(mark, (texts.get(mark) ?? '') + item.str);
        else if (isArtifact === 0 && item.str.trim() !== '') outside.push(item.str);
      } else if (item.type === 'endMarkedContent') {
        if (marks.pop() === undefined) isArtifact--;
      } else {
        marks.push('id' in item && item.id !== null ? item.id : undefined);
        if (marks.at(-1) === undefined) isArtifact++;
      }
    }
  }
  const textOf = (node: Node) =>
    [...nodesIn(node)]
      .flatMap(({ type, id }) => (type === 'content' && id !== undefined ? (texts.get(id) ?? []) : []))
      .join(' ')
      .replace(/\s+/g, ' ')
      .trim();
  const withRole = (role: string) => all.filter((node) => node.role === role);
  return { document, withRole, textOf, outside };
}

describe('the parts of a packet as a PDF', () => {
  it('are told apart: headings in order, tables with head cells, lists, drawings with words', async () => {
    const packet = packetOf(plainStore);
    const { document, withRole, textOf } = await readTags((await packetPdf(packet)).bytes);
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
      const { outside, withRole } = await readTags((await packetPdf(packetOf(store))).bytes);
      expect(outside).toEqual([]);
      expect(withRole('TR').length).toBeGreaterThan(10);
    }
  });
});
