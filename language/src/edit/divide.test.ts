/** A bus divided at a repeater: what is written where, beyond what the rules' own examples show. */
import { describe, expect, it } from 'vitest';
import { checkText } from '../testing/check-text.js';
import { fixText } from '../testing/fix-text.js';

const catalogue = `cable Pair22 { conductor 22 AWG stranded twisted pairs 1 shield foil drain impedance 120 ohm }
device Head { role head port field : rs485 { terminals + "A" - "B" shield "S" load 1/8 terminator switch 120 ohm } }
device Board { port field : rs485 { terminals + "A" - "B" shield "S" load 1/8 terminator switch 120 ohm address dial 1..99 } }
device Joiner {
  role repeater
  port one : rs485 { terminals + "A" - "B" shield "S" load 1/8 terminator switch 120 ohm }
  port two : rs485 { terminals + "A" - "B" shield "S" load 1/8 }
}
`;
const storeOf = (...statements: string[]) =>
  `${catalogue}store hill {
  bus cases "Cases" : modbus-rtu 19200 8E1 on Pair22 { // block
${statements.map((statement) => `    ${statement}`).join('\n')}
  }
}
`;
function divided(text: string): string {
  const [finding] = checkText(text, ['bus-too-long']);
  const after = fixText(text, finding!);
  expect(checkText(after, ['bus-too-long', 'syntax'])).toEqual([]);
  return after.slice(after.indexOf('store hill'));
}

describe('a bus divided at a repeater', () => {
  const remarks = [
    'shield earthed at head',
    '// why here',
    'bias at a2 510 ohm',
    'ambient 30 degC',
    'colours + white - blue',
  ];

  it('keeps what is said of each landing with it, comments too, and gives each part its earth and its bias', () => {
    const text = storeOf(
      'from head : Head terminate switch',
      '// the aisle',
      '2000 ft to a1 : Board address 1 // at the door',
      'tap 3 ft to p1 : Board address 2',
      '2500 ft built 2400 ft to a2 : Board address 1 terminate switch',
      ...remarks,
    ).replace('address 1 terminate', 'address 3 terminate');
    expect(divided(text)).toBe(`store hill {
  bus cases "Cases" : modbus-rtu 19200 8E1 on Pair22 { // block
    from head : Head terminate switch
    // the aisle
    2000 ft to a1 : Board address 1 // at the door
    tap 3 ft to p1 : Board address 2
    3 ft to repeater1.one : Joiner terminate switch
    shield earthed at head
    ambient 30 degC
    colours + white - blue
    bias at head 510 ohm
  }

  bus casesB "Cases, beyond repeater1" : modbus-rtu 19200 8E1 on Pair22 {
    from repeater1.two terminate resistor 120 ohm
    2500 ft built 2400 ft to a2 : Board address 3 terminate switch
    // why here
    bias at a2 510 ohm
    ambient 30 degC
    colours + white - blue
    shield earthed at repeater1
  }
}
`);
  });

  it('leaves the bus to the part with the head, wherever the text starts', () => {
    const text = storeOf(
      'from a1 : Board address 1 terminate switch',
      '2500 ft to a2 : Board address 2',
      '2000 ft to head : Head terminate switch',
      'shield earthed at head',
      'colours + white - blue',
    );
    const [kept = '', added = ''] = divided(text).split('  bus casesB');
    expect(kept).toContain('from repeater1.one : Joiner terminate switch\n    3 ft to a2 : Board address 2\n');
    expect(added).toContain('2500 ft to repeater1.two terminate resistor 120 ohm\n');
  });

  it('names in each part the areas that it walks through', () => {
    const text = storeOf(
      'area Office',
      'from head : Head terminate switch',
      'area "Dairy wall" // glass',
      '2000 ft to a1 : Board address 1',
      'area Cellar',
      '2500 ft to a2 : Board address 2 terminate switch',
      'area Attic',
      ...remarks,
    );
    const [kept = '', added = ''] = divided(text).split('  bus casesB');
    const areasIn = (part: string) => part.match(/area .*/g);
    expect(areasIn(kept)).toEqual(['area Office', 'area "Dairy wall" // glass', 'area Attic']);
    expect(areasIn(added)).toEqual(['area Cellar']);
    expect(added.indexOf('area Cellar')).toBeLessThan(added.indexOf('to a2'));
  });

  it('is not offered before all that the bus says is understood', () => {
    const text = storeOf(
      'from head : Head terminate switch',
      '2500 ft to a1 : Board address 1',
      '2500 ft to a2 : Board address 2 terminate switch',
      'bias at head switch',
    );
    expect(checkText(text).map(({ rule }) => rule)).toContain('bias-switch-missing');
    expect(checkText(text, ['bus-too-long'])[0]?.fixes()).toEqual([]);
  });

  it('is not offered where no repeater helps or fits, and says why', () => {
    const fixesOf = (text: string) => checkText(text, ['bus-too-long'])[0]?.fixes();
    const messageOf = (text: string) => checkText(text, ['bus-too-long'])[0]?.message;
    const long = storeOf('from head : Head', '3900 ft to a1 : Board address 1', '4200 ft to a2 : Board address 2');
    expect(fixesOf(long)).toEqual([]);
    expect(messageOf(long)).toMatch(
      /; shorten it, for no repeater helps, because the run from a1 to a2 alone has 4,200 ft$/,
    );
    const other = storeOf('from head : Head', '3900 ft to a1 : Board address 1', '900 ft to a2 : Board address 2');
    expect(fixesOf(other)).toHaveLength(1);
    const misfit = other.replace(/device Joiner[\s\S]*?\n\}/, (joiner) => joiner.replaceAll('rs485', 'can'));
    expect(fixesOf(misfit)).toEqual([]);
    expect(messageOf(misfit)).toMatch(
      /; shorten it or divide it with a repeater, of which the catalogue has none that takes it$/,
    );
  });

  it('takes several repeaters where one is not enough, each part behind the one that leads to it', () => {
    const text = storeOf(
      'from a1 : Board address 1 terminate switch',
      '3000 ft to a2 : Board address 2',
      'tap 3 ft to p2 : Board address 12',
      '3000 ft to head : Head',
      '2900 ft to a3 : Board address 3',
      '2800 ft to a4 : Board address 4 terminate switch',
      'shield earthed at a3',
      'colours + white - blue',
    );
    expect(checkText(text, ['bus-too-long'])[0]?.message).toMatch(/; shorten it or divide it with 3 repeaters$/);
    expect(divided(text)).toBe(`store hill {
  bus cases "Cases" : modbus-rtu 19200 8E1 on Pair22 { // block
    from repeater2.one : Joiner terminate switch
    3 ft to head : Head
    2900 ft to a3 : Board address 3
    3 ft to repeater3.one : Joiner terminate switch
    shield earthed at a3
    colours + white - blue
  }

  bus casesB "Cases, beyond repeater3" : modbus-rtu 19200 8E1 on Pair22 {
    from repeater3.two terminate resistor 120 ohm
    2800 ft to a4 : Board address 4 terminate switch
    colours + white - blue
    shield earthed at repeater3
  }

  bus casesC "Cases, beyond repeater2" : modbus-rtu 19200 8E1 on Pair22 {
    from repeater1.one : Joiner terminate switch
    3 ft to a2 : Board address 2
    tap 3 ft to p2 : Board address 12
    3000 ft to repeater2.two terminate resistor 120 ohm
    colours + white - blue
    shield earthed at repeater2
  }

  bus casesD "Cases, beyond repeater1" : modbus-rtu 19200 8E1 on Pair22 {
    from a1 : Board address 1 terminate switch
    3000 ft to repeater1.two terminate resistor 120 ohm
    colours + white - blue
    shield earthed at repeater1
  }
}
`);
  });
});
