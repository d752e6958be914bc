import { describe, expect, it } from 'vitest';
import { checkText, projectOf } from '../../../language/src/testing/check-text.js';
import { pollTime } from '../physics/modbus.js';
import { tokenHop } from '../physics/mstp.js';
import { bitsPerSecond } from '../quantity.js';
import { busFigures } from './bus-figures.js';
import { lineOf } from './line.js';
import { createStudy } from './study.js';

const port = (name: string) => `  port ${name} : rs485 {
    load 1/8
    terminator switch 120 ohm
  }
`;

/** Two lines of a head: one through two repeaters over three buses, one alone. */
const store = (kind: string, last = 'c1 : Board address 5') => `device Head {
  role head
${port('f1')}${port('f2')}}
device Board {
${port('field').replace('load', 'address software 1..200\n    load')}}
device Repeater {
  role repeater
${port('left')}${port('right')}}
store lark {
  node head : Head
  bus near : ${kind} {
    from head.f1 address 1 terminate switch
    10 m to a1 : Board address 2
    10 m to rep1.left : Repeater terminate switch
  }
  bus alone : ${kind} {
    from head.f2 address 1 terminate switch
    10 m to b1 : Board address 2 terminate switch
  }
  bus middle : ${kind} {
    from rep1.right terminate switch
    10 m to a2 : Board address 3
    10 m to rep2.left : Repeater terminate switch
  }
  bus far : ${kind} {
    from rep2.right terminate switch
    10 m to ${last} terminate switch
  }
}
`;

const storeOf = (text: string) => projectOf({ 'test.pair': text }).storesOf('test.pair')[0]!;
const figuresOf = (text: string) => {
  const built = storeOf(text);
  return built.buses.map((bus) => busFigures(createStudy(built, bus)));
};

describe('a line', () => {
  it('is all that repeaters join', () => {
    const built = storeOf(store('modbus-rtu 19200 8E1'));
    const lines = built.buses.map((bus) => lineOf(built, bus).map(({ name }) => name));
    const joined = ['near', 'middle', 'far'];
    expect(lines).toEqual([joined, ['alone'], joined, joined]);
  });

  it('is polled as one, without its head and its repeaters', () => {
    const [near, alone, middle] = figuresOf(store('modbus-rtu 19200 8E1'));
    expect([near, alone, middle].map((one) => one?.modbus?.polled_devices)).toEqual([3, 1, 3]);
    expect(near?.modbus?.poll_cycle_s).toBeCloseTo(3 * pollTime(bitsPerSecond(19_200)), 9);
    expect([near, alone].map((one) => one?.modbus?.line)).toEqual([['near', 'middle', 'far'], undefined]);
  });

  it('passes one token, to its masters alone: addresses above 127 are no masters', () => {
    const [near, alone] = figuresOf(store('bacnet-mstp 38400', 'c1 : Board address 150'));
    expect([near, alone].map((one) => one?.mstp?.masters)).toEqual([3, 2]);
    expect(near?.mstp?.token_cycle_s).toBeCloseTo(3 * tokenHop(bitsPerSecond(38_400)), 9);
  });
});

describe('an address', () => {
  const told = (text: string) => checkText(text, ['address-clash', 'address-missing']);

  it('is had by one device of a line', () => {
    expect(told(store('modbus-rtu 19200 8E1'))).toEqual([]);
    const [clash, ...others] = told(store('modbus-rtu 19200 8E1', 'c1 : Board address 2'));
    expect(others).toEqual([]);
    expect(clash?.message).toBe(
      'c1 on bus far and a1 on bus near both have address 2, and a repeater joins the two buses to one line; give one of them another',
    );
    expect(clash?.fixes().map(({ title }) => title)).toEqual([
      'Give c1 address 4, the next free one',
      'Give a1 address 4, the next free one',
    ]);
  });

  it('that is free is free on the whole line', () => {
    const [missing] = told(store('modbus-rtu 19200 8E1', 'c1 : Board'));
    expect(missing?.message).toContain('write address 4');
  });
});
