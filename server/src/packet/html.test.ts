import { parse } from 'parse5';
import { describe, expect, it } from 'vitest';
import { packetHtml } from './html.js';
import { hostileNames, hostileStore, packetOf, plainStore } from './testing/stores.js';

/** A node of the tree that parse5 gives, as far as the tests look. */
interface Node {
  readonly nodeName: string;
  readonly value?: string;
  readonly attrs?: readonly { readonly name: string; readonly value: string }[];
  readonly childNodes?: readonly Node[];
}

function* nodesIn(node: Node): Generator<Node> {
  yield node;
  for (const child of node.childNodes ?? []) yield* nodesIn(child);
}
const textIn = (node: Node) => [...nodesIn(node)].map(({ value = '' }) => value).join('\u0000');
const attribute = ({ attrs }: Node, name: string) => attrs?.find((one) => one.name === name)?.value;

describe('a packet as HTML', () => {
  const nodes = (text: string) => [...nodesIn(parse(packetHtml(packetOf(text))) as Node)];

  it('takes every name for text: nothing runs, loads or links elsewhere', () => {
    const all = nodes(hostileStore);
    const names = new Set(all.map(({ nodeName }) => nodeName));
    for (const name of ['script', 'img', 'iframe', 'object', 'link', 'form', 'base']) expect(names).not.toContain(name);
    for (const node of all) {
      for (const { name, value } of node.attrs ?? []) {
        expect(name).not.toMatch(/^on/);
        if (name === 'href') expect(value).toMatch(/^#[a-z0-9-]*$/);
        if (name === 'src') expect.fail(value);
      }
    }
    const texts = textIn({ nodeName: 'all', childNodes: [parse(packetHtml(packetOf(hostileStore))) as Node] });
    for (const name of hostileNames) {
      const shown = name.replace(/[\u202e\u200f]/g, '\ufffd');
      expect(texts).toContain(shown);
    }
  });

  it('turns no direction of writing', () => {
    expect(packetHtml(packetOf(hostileStore))).not.toMatch(/[\u202a-\u202e\u2066-\u2069\u200e\u200f]/);
  });

  it('has a style that ends where it should, whatever the names', () => {
    const styles = nodes(hostileStore).filter(({ nodeName }) => nodeName === 'style');
    expect(styles).toHaveLength(1);
    expect(textIn(styles[0]!)).toMatch(/size: letter/);
  });

  it('says who may run what: nobody anything', () => {
    const policy = nodes(plainStore).find((node) => attribute(node, 'http-equiv') === 'Content-Security-Policy');
    expect(attribute(policy!, 'content')).toBe("default-src 'none'; style-src 'unsafe-inline'; img-src data:");
  });

  it('has a section for each sheet, a row for each row and a cell for each column that is not merged', () => {
    const packet = packetOf(plainStore);
    const all = nodes(plainStore);
    const sections = all.filter(({ nodeName }) => nodeName === 'section').map((node) => attribute(node, 'id'));
    expect(sections).toEqual(packet.sheets.map(({ id }) => id));
    const links = all.filter(({ nodeName }) => nodeName === 'a').map((node) => attribute(node, 'href'));
    for (const { id } of packet.sheets) expect(links).toContain(`#${id}`);
    const schedule = all.find((node) => attribute(node, 'id') === 'sheet-4')!;
    const rows = [...nodesIn(schedule)].filter(({ nodeName }) => nodeName === 'tr');
    // One of heads; head, caseA and caseB with a cable and three screws each.
    expect(rows).toHaveLength(1 + 3 * 4);
    const spans = [...nodesIn(schedule)].flatMap((node) => attribute(node, 'rowspan') ?? []);
    expect(spans).toEqual(new Array(3 * 5).fill('4'));
  });

  it('is the same for the same packet', () => {
    expect(packetHtml(packetOf(plainStore))).toBe(packetHtml(packetOf(plainStore)));
  });
});
