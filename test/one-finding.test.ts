/** One slip of whoever writes gives one finding: what follows from it is not told beside it. */
import { expect, it } from 'vitest';
import { projectOf } from './testing/samples.js';

const catalogue = `cable Pair22 {
  conductor 22 AWG stranded
  twisted pairs 1
  shield foil drain
  impedance 120 ohm
  capacitance 12.8 pF/ft
  velocity 66 %
  colours white, blue
}
device Head {
  role head
  revision A, B
${['f1', 'f2']
  .map(
    (name) => `  port ${name} : rs485 {
    terminals + "D+" - "D-" shield "SH"
    speaks modbus-rtu
    polarity required
    load 1/8
    terminator switch 120 ohm
    bias switch 510 ohm
    rates 9600, 19200
    ${name === 'f2' ? 'reserved in A "not fitted"' : ''}
  }`,
  )
  .join('\n')}
  port bench : rs485 {
    terminals + "D+" - "D-" shield "SH"
    twin of f1
  }
  port net : ethernet
}
device Board {
  port field : rs485 {
    terminals + "D+" - "D-" shield "SH"
    speaks modbus-rtu
    polarity required
    load 1/8
    terminator switch 120 ohm
    address dial 1..99
    rates 9600, 19200
  }
}
`;

const store = `import "catalogue.pair"

store lark {
  node head : Head revision B
  bus cases : modbus-rtu 19200 8E1 on Pair22 {
    from head.f1 terminate switch
    40 ft to c1 : Board address 1
    12 ft to c2 : Board address 2
    12 ft to c3 : Board address 3
    tap 1 ft to c4 : Board address 4
    12 ft to c5 : Board address 5 terminate switch
    shield earthed at head
    bias at head switch
    colours + white - blue
  }
  bus rack : modbus-rtu 19200 8E1 on Pair22 {
    from head.f2 terminate switch
    30 ft to d1 : Board address 1 terminate switch
    shield earthed at head
    colours + white - blue
  }
}
`;

const rulesOf = (text: string) =>
  projectOf(
    new Map([
      ['catalogue.pair', catalogue],
      ['store.pair', text],
    ]),
    ['store.pair'],
  )
    .findingsOf('store.pair')
    .map(({ rule, message }) => `${rule}: ${message}`);

it('finds nothing in the sound store', () => expect(rulesOf(store)).toEqual([]));

const slips: readonly (readonly [what: string, rule: string, before: string, after: string])[] = [
  ['a line is copied', 'duplicate-name', '    12 ft to c3', '    12 ft to c2 : Board address 2\n    12 ft to c3'],
  ['the name of a copied line stays', 'duplicate-name', 'to c5 :', 'to c3 :'],
  ['a name is used on two buses', 'duplicate-name', 'to d1 :', 'to c1 :'],
  ['a block is copied', 'duplicate-name', 'bus rack', 'bus cases'],
  ['a terminator without its unit', 'unit-missing', 'address 5 terminate switch', 'address 5 terminate resistor 120'],
  ['a terminator of 0', 'value-impossible', 'address 5 terminate switch', 'address 5 terminate resistor 0 ohm'],
  ['a rate in an unknown unit', 'unit-unsuited', '19200 8E1', '19.2k 8E1'],
  ['a port of another kind', 'port-kind-mismatch', 'from head.f1', 'from head.net'],
  ['the twin of the port', 'port-wrong-twin', 'from head.f1', 'from head.bench'],
  ['a revision that is none', 'revision-unknown', 'revision B', 'revision D'],
  ['a revision without the port', 'port-reserved', 'revision B', 'revision A'],
  ['a run half written', 'dangling-run', '    12 ft to c3', '    12 ft\n    12 ft to c3'],
  ['a length of 0', 'value-impossible', '12 ft to c2', '0 ft to c2'],
  ['colours are said in two ways', 'statement-repeated', '    colours', '    colours + blue - white\n    colours'],
  ['both wires have one colour', 'statement-repeated', '+ white - blue', '+ white - white'],
  [
    'a temperature is said twice',
    'statement-repeated',
    '    colours',
    '    ambient 9 degC\n    ambient 30 degC\n    colours',
  ],
  [
    'a splice has an address',
    'statement-foreign',
    '    12 ft to c3',
    '    3 ft to splice s1 address 9\n    12 ft to c3',
  ],
  ['a bias without its unit', 'unit-missing', 'bias at head switch', 'bias at head 510'],
];

it.each(slips)('%s: %s', (_, rule, before, after) => {
  const text = store.replace(before, after);
  expect(text).not.toBe(store);
  const told = rulesOf(text);
  expect(told.map((one) => one.split(':')[0])).toEqual([rule]);
});

it('hides no other fault of the bus behind a value that cannot be read', () => {
  const text = store
    .replace('40 ft to c1', '0 ft to c1')
    .replace('tap 1 ft', 'tap 100 ft')
    .replace('address 2\n', 'address 2 terminate switch\n');
  expect(rulesOf(text).map((one) => one.split(':')[0])).toEqual([
    'value-impossible',
    'terminator-midline',
    'tap-too-long',
  ]);
});
