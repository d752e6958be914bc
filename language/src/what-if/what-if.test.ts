import type { Bus, Cable } from '@fieldpair/shared';
import { describe, expect, it } from 'vitest';
import { projectOf } from '../testing/check-text.js';
import { faultChoices, mendedBus, quantityFrom, Refusal, readFault } from './index.js';

const text = `
cable Pair22 { conductor 22 AWG impedance 120 ohm velocity 66 % }
cable Pair24 { conductor 24 AWG impedance 100 ohm velocity 66 % }
device Head { role head port one : rs485 { load 1/8 } port two : rs485 { load 1/8 } }
device Board { port field : rs485 { load 1/8 } }
store trial {
  node head : Head
  node "Kühlzelle 3" : Board
  bus cases : modbus-rtu 19200 8E1 on Pair22 {
    from head.one terminate resistor 120 ohm
    30 m to "Kühlzelle 3" address 1
    20 m to caseB : Board address 2
    5 m to head.two
    colours + white - blue
  }
}
`;

const project = () => projectOf({ 'store.pair': text });
const bus = project().storesOf('store.pair')[0]!.buses[0]!;
const cables = new Map(
  project()
    .catalogueOf('store.pair')
    .flatMap((one) => [...one.cables]),
);
const read = (phrase: string) => readFault(bus, phrase, (name): Cable | undefined => cables.get(name));
const refused = (phrase: string) => {
  const found = read(phrase);
  return found instanceof Refusal ? found.reason : found;
};

describe('a fault in words', () => {
  it('is understood with its place and its value', () => {
    expect(read('no terminator at head.one')).toEqual({ kind: 'terminators', landing: 0, terminations: [] });
    expect(read('terminator 1.5 kohm at caseB')).toEqual({
      kind: 'terminators',
      landing: 2,
      terminations: [{ resistance: 1500 }],
    });
    expect(read('crossed at "Kühlzelle 3"')).toEqual({ kind: 'crossed', landing: 1 });
    expect(read('short 5 ohm from head.one to "Kühlzelle 3" at 40 %')).toEqual({
      kind: 'short',
      run: 0,
      at: 0.4,
      resistance: 5,
    });
    expect(read('length 12 ft 6 in from "Kühlzelle 3" to caseB')).toEqual({
      kind: 'length',
      run: 1,
      length: expect.closeTo(3.81, 9),
    });
    expect(read('cable Pair24 from caseB to "Kühlzelle 3"')).toMatchObject({
      kind: 'cable',
      run: 1,
      cable: { name: 'Pair24' },
    });
  });

  it('counts its place from the landing that is named first', () => {
    expect(read('open from "Kühlzelle 3" to head.one at 40 %')).toEqual({ kind: 'open', run: 0, at: 0.6 });
    expect(read('open from caseB to "Kühlzelle 3"')).toEqual({ kind: 'open', run: 1, at: 0.5 });
  });

  it('is refused with what there is instead', () => {
    expect(refused('crossed at caseC')).toBe('bus cases has no landing caseC; did you mean caseB?');
    expect(refused('crossed at zzz')).toBe(
      'bus cases has no landing zzz; it has head.one, Kühlzelle 3, caseB and head.two',
    );
    expect(refused('crossed at head')).toBe('bus cases lands on head more than once: at head.one and head.two');
    expect(refused('open from head.one to caseB')).toBe(
      'no run of bus cases joins head.one and caseB; from head.one runs lead to Kühlzelle 3',
    );
    expect(refused('cable Pair99 from caseB to "Kühlzelle 3"')).toBe(
      'there is no cable Pair99 in the catalogue of bus cases',
    );
    expect(refused('terminator 120 at caseB')).toBe('resistance "120" lacks its unit, such as ohm or kohm or Mohm');
    expect(refused('terminator 0 ohm at caseB')).toMatch(/^resistance "0 ohm" is out of reach: from 1 ohm to /);
    for (const phrase of [
      '',
      'at',
      'crossed',
      'crossed at',
      'open from caseB',
      'melted at caseB',
      'length from caseB to head.two',
      'open 3 from caseB to head.two',
    ]) {
      expect(typeof refused(phrase), phrase).toBe('string');
    }
  });

  it('that is offered is understood', () => {
    const offered = faultChoices(bus);
    expect(offered.map(({ group }) => group)).toContain('Terminator missing');
    const phrases = offered.flatMap((group) => group.phrases);
    expect(phrases).toContain('no terminator at head.one');
    expect(phrases.filter((phrase) => read(phrase) instanceof Refusal)).toEqual([]);
  });
});

describe('a quantity in words', () => {
  const edge = (words: string) => quantityFrom(words, 'time', { least: 1e-10, most: 1 });
  it('has its unit', () => {
    expect(edge('300 ns')).toBeCloseTo(3e-7, 12);
    expect(edge('1.5us')).toBeCloseTo(1.5e-6, 12);
    expect(quantityFrom('19,200', 'rate', { least: 1, most: 1e8 }, 'bit/s')).toBe(19_200);
    expect(quantityFrom('115.2 kbit/s', 'rate', { least: 1, most: 1e8 }, 'bit/s')).toBeCloseTo(115_200, 6);
  });

  it('is refused where it cannot be one', () => {
    for (const words of ['', 'fast', '300', '300 ohm', '300 ns ago', '1e400 ns', '-3 us', '0 ns', 'NaN ns']) {
      expect(edge(words), words).toBeInstanceOf(Refusal);
    }
  });
});

describe('a fix in thought', () => {
  it('gives the bus as it would be, and leaves the texts alone', () => {
    const before = project();
    const finding = before.findingsOf('store.pair').find(({ rule }) => rule === 'end-unterminated')!;
    const mended = mendedBus(before, 'store.pair', finding, finding.fixes()[0]!, bus)!;
    const count = ({ landings }: Bus) => landings.filter(({ terminations }) => terminations.length).length;
    expect([count(bus), count(mended.bus)]).toEqual([1, 2]);
    expect(before.textOf('store.pair')).toBe(text);
  });
});
