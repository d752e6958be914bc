import { describe, expect, it } from 'vitest';
import type { Position } from 'vscode-languageserver';
import { projectOf } from '../testing/check-text.js';
import { Desk } from './desk.js';
import { prepareRename, rename } from './rename.js';

const catalogue = `cable Pair22 { impedance 120 ohm }
cable Pair24 { impedance 120 ohm }
device Head {
  revision A, B
  port left : rs485 { reserved in A }
  port right : rs485 { twin of left }
}
device Board { port field : rs485 }
`;
const store = `import "catalogue.pair"
store hill {
  node head : Head revision B
  node spare1 : Board
  network plant { head }
  network other { spare1 }
  bus cases : rs485 on Pair22 {
    area "Plant room"
    from head.left
    3 ft on Pair24 to splice box
    3 ft to a : Board
    tap 1 ft to box
    shield earthed at head.left
    waive island at head.left because "x"
    waive branching at box because "x"
  }
  bus rack : rs485 on Pair22 {
    area "Back office"
    from spare1
    area "Plant room"
  }
  waive no-head at cases because "x"
  waive no-head at head.left because "x"
}
`;
const more =
  'import "store.pair"\nstore hill continued {\n  bus far : rs485 on Pair22 { area "Plant room" from head.right revision B\n 3 ft to spare1 }\n}\n';
const files = { 'catalogue.pair': catalogue, 'store.pair': store, 'more.pair': more };

function positionAt(text: string, needle: string): Position {
  const before = text.slice(0, text.indexOf(needle)).split('\n');
  return { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
}

/** How many mentions are renamed in each file, asked at a mention in the store's file or the catalogue. */
function renamed(needle: string, name: string, file: 'store.pair' | 'catalogue.pair' = 'store.pair') {
  const desk = new Desk(projectOf(files));
  const position = positionAt(files[file], needle);
  expect(prepareRename(desk, file, position)).toBeDefined();
  const { changes = {} } = rename(desk, file, position, name) ?? {};
  return Object.fromEntries(Object.entries(changes).map(([one, edits]) => [one, edits.length]));
}

describe('renaming', () => {
  it.each([
    ['a node', 'head : Head', { 'store.pair': 6, 'more.pair': 1 }],
    ['a node that another file lands', 'spare1 : Board', { 'store.pair': 3, 'more.pair': 1 }],
    ['a splice', 'box\n    3', { 'store.pair': 3 }],
    ['a bus', 'cases :', { 'store.pair': 2 }],
    ['a network', 'plant', { 'store.pair': 1 }],
    ['a store', 'hill', { 'store.pair': 1, 'more.pair': 1 }],
    ['a cable', 'Pair22 {', { 'catalogue.pair': 1, 'store.pair': 2, 'more.pair': 1 }],
    ['a device', 'Head revision', { 'catalogue.pair': 1, 'store.pair': 1 }],
    ['a port', 'left\n', { 'catalogue.pair': 2, 'store.pair': 4 }],
    ['an area, which every bus of its store may lead through', '"Plant room"', { 'store.pair': 2, 'more.pair': 1 }],
    ['a revision', 'B\n', { 'catalogue.pair': 1, 'store.pair': 1, 'more.pair': 1 }],
  ])('changes every mention of %s', (_, needle, counts) => {
    expect(renamed(needle, 'fresh')).toEqual(counts);
  });

  it('starts anywhere, the catalogue too', () => {
    expect(renamed('left :', 'fresh', 'catalogue.pair')).toEqual({ 'catalogue.pair': 2, 'store.pair': 4 });
    expect(renamed('A, B', 'C', 'catalogue.pair')).toEqual({ 'catalogue.pair': 2 });
  });

  it.each([
    ['head : Head', 'spare1', 'another node of store hill is called spare1 already; choose another name for node head'],
    ['head : Head', 'box', 'a splice of store hill is called box already; choose another name for node head'],
    ['box\n    3', 'a', 'a node of store hill is called a already; choose another name for splice box'],
    ['cases :', 'rack', 'another bus of store hill is called rack already; choose another name for bus cases'],
    ['cases :', 'far', 'another bus of store hill is called far already; choose another name for bus cases'],
    ['plant', 'other', 'another network of store hill is called other already; choose another name for network plant'],
    ['Pair22 {', 'Pair24', 'another cable is called Pair24 already; choose another name for cable Pair22'],
    ['Head revision', '"Board"', 'another device is called Board already; choose another name for device Head'],
    ['left\n', 'right', 'another port of device Head is called right already; choose another name for port left'],
    ['B\n', 'A', 'another revision of device Head is called A already; choose another name for revision B'],
    [
      '"Plant room"',
      'Back office',
      'another area of store hill is called Back office already; choose another name for area Plant room',
    ],
    [
      'spare1 : Board',
      'cases',
      'a bus of store hill, where rules are waived, is called cases already; choose another name for node spare1',
    ],
    ['cases :', '  ', 'a name cannot be empty; write at least one character'],
  ])('of %j to %j is refused', (needle, name, message) => {
    expect(() => renamed(needle, name)).toThrow(message);
  });

  it('writes areas in quotes', () => {
    const desk = new Desk(projectOf(files));
    const edit = rename(desk, 'store.pair', positionAt(store, '"Back office"'), 'Attic');
    expect(edit?.changes?.['store.pair']?.map(({ newText }) => newText)).toEqual(['"Attic"']);
  });

  it('to the same name changes nothing, and is no clash', () => {
    expect(renamed('cases :', 'cases')).toEqual({ 'store.pair': 2 });
  });
});
