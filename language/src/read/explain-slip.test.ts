/** What people get to read when a line is half typed, or typed as other languages have it: one message, where it is. */
import { describe, expect, it } from 'vitest';
import { checkText } from '../testing/check-text.js';

const catalogue = `cable Pair { impedance 120 ohm conductor 22 AWG }
device Head { role head port left : rs485 port right : rs485 }
device Board { port field : rs485 { address dial 1..99 } }
`;
const frames: Readonly<Record<string, (line: string) => string>> = {
  bus: (line) => `${catalogue}store hill {
  node head : Head
  bus cases : modbus-rtu 9600 8E1 on Pair {
    from head.left
    3 ft to a : Board address 1
    ${line}
    5 ft to z : Board address 2
    shield earthed at head
  }
}
`,
  store: (line) => `${catalogue}store hill {\n  node head : Head\n  ${line}\n  node last : Head\n}\n`,
  cable: (line) => `cable P {\n  capacitance 40 pF/m\n  ${line}\n  velocity 66 %\n}\nstore s { }\n`,
  device: (line) => `device D {\n  role node\n  ${line}\n  mark "m"\n}\nstore s { }\n`,
  port: (line) =>
    `device D {\n  port p : rs485 {\n    load 1/8\n    ${line}\n    polarity required\n  }\n}\nstore s { }\n`,
  file: (line) => `cable A { impedance 120 ohm }\n${line}\ncable B { impedance 120 ohm }\n`,
};

/** The findings of the text itself, with the word that each marks and how many lines below the written one it is. */
function told(frame: string, line: string) {
  const text = frames[frame]!(line);
  const textRules = ['syntax', 'unit-missing', 'unit-unsuited', 'value-impossible', 'unknown-name', 'pen-missing'];
  const rules = [...textRules, 'waiver-unreasoned', 'statement-repeated', 'import-missing', 'unknown-word'];
  const lineOf = (offset: number) => text.slice(0, offset).split('\n').length;
  const written = lineOf(frames[frame]!('\u0000').indexOf('\u0000'));
  return checkText(text, rules).map(({ message, place }) => ({
    word: text.slice(place.start, place.end),
    below: lineOf(place.start) - written,
    message,
  }));
}

const ends = (word: string, due: string) => [word, `After '${word}' the line ends, where ${due}.`] as const;
const stands = (word: string, due: string) => [word, `Here '${word}' stands where ${due}.`] as const;
const landing = 'a landing is due, such as caseA1 or head.field';
const target = 'the landing that the run leads to is due, such as caseA1';
const length = 'a length with its unit is due, such as 38 ft';
const ohms = 'a resistance with its unit is due, such as 120 ohm';

describe('a line that stops short', () => {
  it.each([
    ['bus', 'from', ends('from', landing)],
    ['bus', 'area', ends('area', 'the name of the area is due, such as "Dairy wall"')],
    ['bus', 'from head.', ends('.', 'the name of a port is due')],
    ['bus', '3 ft to', ends('to', target)],
    ['bus', 'tap 3 ft to', ends('to', target)],
    ['bus', '3 ft on', ends('on', 'the name of a cable is due')],
    ['bus', '3 ft to b :', ends(':', 'the name of the device is due')],
    ['bus', '3 ft to b : Board address', ends('address', 'a number is due, such as 12')],
    ['bus', '3 ft to b : Board terminate', ends('terminate', 'switch or resistor is due')],
    ['bus', '3 ft to b : Board terminate resistor', ends('resistor', ohms)],
    ['bus', '3 ft to b : Board shield', ends('shield', 'through, open or floating is due')],
    ['bus', '3 ft to b : Board switch', ends('switch', 'off is due')],
    ['bus', '3 ft to b : Board revision', ends('revision', 'a revision is due, such as B')],
    ['bus', '3 ft to splice', ends('splice', 'the name of the splice is due')],
    ['bus', 'shield earthed', ends('earthed', 'at and a landing is due')],
    ['bus', 'shield earthed at', ends('at', landing)],
    ['bus', 'bias at', ends('at', landing)],
    ['bus', 'bias at head', ends('head', 'switch or the resistance of its resistors is due')],
    ['bus', 'bias at head.left', ends('left', 'switch or the resistance of its resistors is due')],
    ['bus', 'ambient', ends('ambient', 'a temperature with its unit is due, such as 40 degC')],
    ['bus', 'waive', ends('waive', 'the id of a rule is due, such as tap-too-long')],
    ['bus', 'waive tap-too-long because', ends('because', 'the reason in quotes is due')],
    ['store', 'network', ends('network', 'the name of the network is due')],
    ['store', 'node x :', ends(':', 'the name of the device is due')],
    ['store', 'bus b', ends('b', "':' is due")],
    ['store', 'bus b :', ends(':', 'a kind of bus is due, such as modbus-rtu')],
    ['cable', 'conductor', ends('conductor', 'a size with its unit is due, such as 22 AWG')],
    ['cable', 'impedance', ends('impedance', ohms)],
    ['cable', 'colours white,', ends(',', 'another entry of the list is due')],
    ['device', 'revision', ends('revision', 'a revision is due, such as B')],
    ['device', 'port x :', ends(':', 'a kind of bus is due, such as rs485')],
    ['port', 'terminals +', ends('+', 'the mark of the terminal in quotes is due')],
    ['port', 'terminator switch', ends('switch', ohms)],
    ['port', 'address dial 1..', ends('..', 'the highest number is due')],
    ['port', 'twin of', ends('of', 'a name is due')],
    ['file', 'store', ends('store', 'the name of the store is due')],
    ['file', 'store x', ends('x', "'{' is due")],
  ])('in a %s: %s', (frame, line, [word, message]) => {
    expect(told(frame, line)).toEqual([{ word, below: 0, message }]);
  });
});

describe('a line with something else than what is due', () => {
  const here = (word: string, rest: string) => [word, `Here '${word}' stands${rest}`] as const;
  it.each([
    ['bus', '3 ft to b : Board address x', stands('x', 'a number is due, such as 12')],
    ['bus', '3 ft to b : Board terminate 120 ohm', stands('120', 'switch or resistor is due')],
    ['bus', 'tap to b : Board', stands('to', length)],
    ['bus', '3 ft built to b : Board', stands('to', length)],
    ['bus', '3 ft on to b : Board', stands('to', 'the name of a cable is due')],
    ['bus', '3 ft to to : Board address 7', stands('to', target)],
    ['bus', '3 ft b : Board', here('b', " where 'to' is due: a run is written LENGTH to LANDING.")],
    ['bus', '3 ft t', here('t', " where 'to' is due: a run is written LENGTH to LANDING.")],
    ['bus', 'to b : Board', here('to', '; a run begins with its length, such as 38 ft to caseA1.')],
    ['bus', '3 ft to b : Board adress 4', here('adress', ', which means nothing here; did you mean address?')],
    ['bus', 'colors + white - blue', here('colors', ', which means nothing here; did you mean colours?')],
    ['bus', '3,5 m to b : Board', here(',', '; decimals are written with a point, such as 3.5 m.')],
    ['bus', '3 ft to b : Board address 5,', here(',', ' where no list goes on; remove it.')],
    ['bus', 'waive tap-too-long "why"', ['"why"', `Here '"why"' stands; a reason is written after because.`]],
    [
      'bus',
      '3 ft to b Board',
      here('Board', ", which begins no statement; a device is written behind ':', such as caseA1 : Board."),
    ],
    [
      'bus',
      "3' to b : Board",
      ["'", "''' means nothing here; write the unit, such as 3 ft, and texts in double quotes."],
    ],
    ['bus', '3 ft to b : Board;', [';', "';' means nothing here; a statement ends with its line."]],
    ['bus', '# comment', ['#', "'#' means nothing here; a comment begins with //."]],
    ['store', 'node : Head', stands(':', 'the name of the node is due')],
    ['store', 'from head', here('from', ', which begins no statement of this block.')],
    ['store', 'comp : Head', here('comp', ', which begins no statement; a node is declared by node comp : DEVICE.')],
    [
      'store',
      'network n { head last }',
      here('last', " where a comma is due: several are written with ',' between them."),
    ],
    [
      'store',
      'bus b : modbus-rtu 9600 8X1 { }',
      ['8', "Here '8X1' stands where a character format such as 8E1, 'on' or '{' is due."],
    ],
    ['device', 'revision A B', here('B', " where a comma is due: several are written with ',' between them.")],
    ['device', 'mark x', stands('x', 'a text in quotes is due')],
    ['port', 'address 1..99', stands('1', 'dial, switches or software is due')],
    ['file', '}', ['}', "This '}' closes no block; remove it."]],
    ['file', 'stor x { }', here('stor', ', which means nothing here; did you mean store?')],
    [
      'file',
      'bus b : can { }',
      here('bus', ' outside of a block that could hold it; import, cable, device or store begins a declaration.'),
    ],
    ['file', 'import catalogue.pair', stands('catalogue', 'the path of a file in quotes is due')],
  ] as const)('in a %s: %s', (frame, line, [word, message]) => {
    expect(told(frame, line)).toEqual([{ word, below: 0, message }]);
  });

  it('tells where a block was not ended', () => {
    expect(told('store', 'network n { head')).toEqual([
      {
        word: 'node',
        below: 1,
        message:
          "Here 'node' stands, which does not belong in this block; if the block was to end before, close it with '}'.",
      },
    ]);
  });

  it('lets a device have the role node, although node is a keyword', () => {
    expect(told('device', 'revision A')).toEqual([]);
  });
});

it.each([
  ['store hill {\n  bus a : modbus-rtu {\n    from b\n  }\n', 'the block of store hill, which begins on line 1'],
  ['store hill {\n  bus a : modbus-rtu {\n    from b\n', 'the block of bus a, which begins on line 2'],
])('tells of a block without an end where it begins: %j', (text, where) => {
  const [finding, ...others] = checkText(text, ['syntax']);
  expect(others).toEqual([]);
  expect(finding?.message).toBe(`The file ends inside ${where}; close it with '}'.`);
});
