import { describe, expect, it } from 'vitest';
import { checkText } from '../testing/check-text.js';
import { fixText } from '../testing/fix-text.js';

const good = `cable Pair {
  conductor 22 AWG stranded
  twisted pairs 1
  shield foil drain
  impedance 120 ohm
  capacitance 12.5 pF/ft
  velocity 66 %
  colours white, blue
}
device Head {
  role head
  revision A, B
  port left : rs485 {
    terminals + "A" - "B"
    speaks modbus-rtu, bacnet-mstp
    load 1/8
    terminator switch 120 ohm
  }
  port right : rs485
}
device Board {
  port field : rs485 { address dial 1..99 terminator fixed 120 ohm }
}
store hill "Hill" {
  node head : Head revision B
  bus cases "Cases" : modbus-rtu 9600 8E1 on Pair {
    from head.left terminate switch
    38 ft to splice s1
    3.5 m to a : Board address 1
    shield earthed at head
    colours + white - blue
    ambient 40 degC
  }
  waive tap-too-long at head because "agreed"
}
`;
const before = checkText(good).map(({ rule, message }) => `${rule}: ${message}`);

/** One slip: what is written in place of what, and what is offered in its place. */
function mend(right: string, wrong: string, nth = 0) {
  const at = [...good.matchAll(new RegExp(right.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'), 'g'))][nth]!.index;
  const text = good.slice(0, at) + wrong + good.slice(at + right.length);
  const findings = checkText(text);
  const ofSlip = findings.filter(({ rule, message }) => !before.includes(`${rule}: ${message}`));
  expect(
    ofSlip.map(({ message }) => message),
    wrong,
  ).toHaveLength(1);
  const [finding] = ofSlip;
  expect(finding!.fixes().length).toBeGreaterThan(0);
  expect(fixText(text, finding!)).toBe(good);
  return { lost: before.length + 1 - findings.length };
}

describe('a misspelt word is told once, offers the right one, and takes nothing else along', () => {
  it.each([
    ['address', 'adress'],
    ['address', 'adres'],
    ['address', 'addr', 1],
    ['address', 'adr', 1],
    ['address', 'Address', 1],
    ['to', 'TO'],
    ['to', 'ot', 1],
    ['to', 'too', 1],
    ['to', 't', 1],
    ['bus', 'Bus'],
    ['bus', 'bsu'],
    ['store', 'Store'],
    ['device', 'devise'],
    ['cable', 'Cabel'],
    ['terminate', 'terminated'],
    ['terminate', 'terminat'],
    ['terminate', 'terminator'],
    ['colours + white', 'colors + white'],
    ['colours + white', 'color + white'],
    ['colours', 'colors'],
    ['colours', 'colour'],
    ['impedance', 'impedence'],
    ['twisted', 'twistet'],
    ['velocity', 'velosity'],
    ['capacitance', 'capacitence'],
    ['capacitance', 'cap'],
    ['speaks', 'speeks'],
    ['modbus-rtu', 'modbusrtu'],
    ['modbus-rtu', 'modbus rtu', 1],
    ['modbus-rtu', 'Modbus-RTU', 1],
    ['modbus-rtu', 'modbus', 1],
    ['modbus-rtu', 'modbus_rtu', 1],
    ['bacnet-mstp', 'bacnet-mtsp'],
    ['tap-too-long', 'tap too long'],
    ['waive', 'wave'],
    ['because', 'becuase'],
    ['splice', 'slpice'],
    ['from', 'form'],
    ['earthed', 'erthed'],
    ['shield earthed', 'sheild earthed'],
    ['node', 'Node'],
    ['on Pair', 'onn Pair'],
    ['on Pair', 'in Pair'],
    ['ambient', 'ambiant'],
    ['revision B', 'rev B'],
    ['switch', 'swich', 1],
    ['at head', 'att head'],
    ['Board address', 'board address'],
    ['on Pair', 'on pair'],
    ['dial', 'dail'],
    ['120 ohm', '120 ohms'],
    ['120 ohm', '120 Ohm'],
    ['120 ohm', '120 Ω'],
    ['120 ohm', '120Ω'],
    ['38 ft', '38 feet'],
    ['38 ft', '38 Ft'],
    ['38 ft', '38 foot'],
    ['38 ft', "38'"],
    ['3.5 m', '3.5 meter'],
    ['3.5 m', '3.5 metres'],
    ['3.5 m', '3,5 m'],
    ['12.5 pF/ft', '12.5 pF/foot'],
    ['40 degC', '40 °C'],
    ['40 degC', '40 celsius'],
    ['22 AWG', '22 awg'],
    ['66 %', '66 percent'],
    ['"Cases"', '“Cases”'],
    ['1\n', '1;\n', 2],
  ] as [string, string, number?][])('%s as %s', (right, wrong, nth) => {
    expect(mend(right, wrong, nth).lost).toBe(0);
  });

  it.each([
    ['tap-too-long', 'tap-to-long'],
    ['earthed at head', 'earthed at haed'],
    ['long at head', 'long at haed'],
    ['from head', 'from haed'],
    ['Board address', 'Baord address'],
    ['on Pair', 'on Piar'],
    ['head.left', 'head.letf'],
    ['revision B', 'revision b'],
  ] as const)('of names, though what depends on them is not judged: %s as %s', (right, wrong) => {
    mend(right, wrong);
  });
});

describe('a name that is none without quotes is told once, with its quotes', () => {
  const told = (wrong: string) =>
    checkText(good.replaceAll('38 ft to splice s1', `38 ft to splice s1\n    9 m to ${wrong} : Board address 2`));
  const sound = told('b').map(({ rule }) => rule);

  it.each(['area', 'case-2', 'Kühlraum', 'Витрина2', '冷藏柜2', 'Vitrine-Süd'])('%s', (name) => {
    const findings = told(name);
    const [slip, ...others] = findings.filter(({ rule }) => rule === 'syntax');
    expect(others).toEqual([]);
    expect(slip?.message).toContain(`as a name it is written in quotes: "${name}"`);
    expect(slip?.fixes().map(({ title }) => title)).toEqual([`Change to "${name}"`]);
    // The landing is there meanwhile.
    expect(findings.filter(({ rule }) => rule !== 'syntax').map(({ rule }) => rule)).toEqual(sound);
  });

  it('takes no word of the next line for a name', () => {
    const messages = checkText(good.replace('    38 ft', '    9 m to\n    tap 1 m to b : Board address 3\n    38 ft'));
    expect(messages.find(({ rule }) => rule === 'syntax')?.message).toContain("After 'to' the line ends");
  });

  it('takes no unit for a name', () => {
    const [slip] = checkText(good.replace('38 ft to', '38 füß to'), ['syntax']);
    expect(slip?.message).not.toContain('as a name');
  });
});

it('mends several slips of one line, and those beside another mistake', () => {
  const wrong = good.replace('to a : Board address 1', 'TO a : Board adress 1 crossd');
  const messages = (text: string) => checkText(text, ['syntax']).map(({ message }) => message);
  expect(messages(wrong)).toEqual(
    ['TO', 'adress', 'crossd'].map((word, index) => {
      const meant = ['to', 'address', 'crossed'][index];
      return `Here '${word}' stands, which means nothing here; did you mean ${meant}?`;
    }),
  );
  expect(messages(good.replace('to a : Board address 1', 'to a : Board adress x'))).toEqual([
    "Here 'adress' stands, which means nothing here; did you mean address?",
    "Here 'x' stands where a number is due, such as 12.",
  ]);
  expect(messages(good.replace('to a : Board', 'too a Board'))).toEqual([
    "Here 'too' stands, which means nothing here; did you mean to?",
    expect.stringMatching(/^Here 'Board' stands, .* a device is written behind ':'/),
  ]);
});
