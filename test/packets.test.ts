/**
 * The packets of the samples, read back with other libraries: every landing, run and address is exactly once on its
 * sheet, in walking order, in each format.
 */
import { parse } from 'parse5';
import readXlsxFile from 'read-excel-file/node';
import { describe, expect, it } from 'vitest';
import { packetHtml } from '../server/src/packet/html.js';
import { packetPdf } from '../server/src/packet/pdf.js';
import { findingsOf } from '../server/src/packet/store-findings.js';
import { nodesIn, type PdfNode, readParts } from '../server/src/packet/testing/pdf-parts.js';
import { packetXlsx } from '../server/src/packet/xlsx.js';
import { makePacket } from '../shared/src/documents/index.js';
import { type Bus, createStudy, type Store } from '../shared/src/index.js';
import { projectOf, sampleTexts } from './testing/samples.js';

const files = [...sampleTexts.keys()];
const project = projectOf(sampleTexts);
const stores = new Map(files.flatMap((file) => project.storesOf(file).map((store) => [store.name, store] as const)));

const packetOf = (store: Store) =>
  makePacket(
    store,
    store.buses.map((bus) => createStudy(store, bus)),
    { date: '2026-03-14', findings: findingsOf(project, store, files) },
  );

/** What a bus's tables have in their first column, by the title of the table. */
function expectedOf(bus: Bus): [string, string[]][] {
  const called = bus.label ?? bus.name;
  const numbers = bus.landings.map(({ index }) => String(index + 1));
  const addressed = bus.landings.filter(({ address, port }) => address ?? port?.address);
  return [
    [`Runs of ${called}`, bus.runs.map(({ index }) => String(index + 1))],
    [`Landings of ${called} in walking order`, numbers],
    [`Addresses of ${called}`, addressed.map(({ index }) => String(index + 1))],
    [`Readings of ${called}`, numbers],
  ];
}

/** Tables without a row are not there. */
const expectedOfStore = ({ buses }: Store) =>
  buses.flatMap((bus) => expectedOf(bus).filter(([, rows]) => 0 < rows.length));

const isOfBus = (title: string) => /^(?:Runs|Landings|Addresses|Readings) of /.test(title);

interface HtmlNode {
  readonly nodeName: string;
  readonly value?: string;
  readonly childNodes?: readonly HtmlNode[];
}

function* htmlNodes(node: HtmlNode): Generator<HtmlNode> {
  yield node;
  for (const child of node.childNodes ?? []) yield* htmlNodes(child);
}
const htmlText = (node: HtmlNode) => [...htmlNodes(node)].map(({ value = '' }) => value).join('');
const named = (node: HtmlNode, name: string) => [...htmlNodes(node)].filter(({ nodeName }) => nodeName === name);

describe.each([...stores.keys()])('the packet of %s', (name) => {
  const store = stores.get(name)!;
  const expected = expectedOfStore(store);

  it('has each landing, run and address once as HTML', () => {
    const tables = named(parse(packetHtml(packetOf(store))) as HtmlNode, 'table').map((table): [string, string[]] => [
      htmlText(named(table, 'caption')[0]!),
      named(table, 'tbody').map((group) => htmlText(named(group, 'td')[0]!)),
    ]);
    const ofBuses = tables.filter(([title]) => isOfBus(title));
    // The last row of a pull list is its sum.
    expect(ofBuses.map(([title, rows]) => [title, rows.filter((row) => row !== '')])).toEqual(expected);
  });

  it('has each landing, run and address once as a PDF', async () => {
    const { trees, textOf, outside } = await readParts((await packetPdf(packetOf(store))).bytes);
    expect(outside).toEqual([]);
    const tables = new Map<string, string[]>();
    let title = '';
    for (const table of trees.flatMap((tree) => [...nodesIn(tree)].filter(({ role }) => role === 'Table'))) {
      const its = (role: string, from: PdfNode = table) => [...nodesIn(from)].filter((node) => node.role === role);
      // What goes on overleaf is the same table, whose caption was before.
      const [caption] = its('Caption').map(textOf);
      if (caption !== undefined && caption !== '') title = caption;
      const rows = its('TR').map((row) => its('TD', row));
      // Other rows of a landing lack the cells that it has in common.
      const whole = Math.max(...rows.map((cells) => cells.length));
      const firsts = rows.filter((cells) => cells.length === whole).flatMap((cells) => cells.slice(0, 1).map(textOf));
      const numbers = firsts.filter((text) => /^\d+$/.test(text));
      tables.set(title, [...(tables.get(title) ?? []), ...numbers]);
    }
    expect([...tables].filter(([one]) => isOfBus(one))).toEqual(expected);
  });

  it('has each landing, run and address once as a workbook', async () => {
    const sheets = await readXlsxFile(Buffer.from(await packetXlsx(packetOf(store))));
    const tables = sheets.map(({ data }) => data.slice(1).map(([first]) => first));
    const lists = tables.map((column) =>
      column.filter((one, row) => one !== null && one !== column[row - 1]).map(String),
    );
    for (const [title, rows] of expected) expect(lists, title).toContainEqual(rows);
  });
});
