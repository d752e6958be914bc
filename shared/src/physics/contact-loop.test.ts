import { describe, expect, it } from 'vitest';
import { studyText } from '../../../language/src/testing/study-text.js';
import { isUnknown } from '../known.js';
import type { ContactLoop } from './contact-loop.js';

/** 10 ohm/km: 1 ohm out and back for 50 m. */
const loopFrom = (statements: string, input = 'reads normal below 1 Mohm'): ContactLoop | string => {
  const { contactLoop } = studyText(`cable Wire { conductor 1 mm2 solid resistance 10 ohm/km }
device Panel { port p : contact-loop { ${input} } }
device Closed { port p : contact-loop { normally closed } }
device Open { port p : contact-loop { normally open } }
device Odd { port p : contact-loop }
device Fixed { port p : contact-loop { normally closed terminator fixed 3.3 kohm } }
store s { bus b : contact-loop on Wire { from panel : Panel ${statements} } }
`);
  return isUnknown(contactLoop) ? contactLoop.unknown : contactLoop;
};
const states = (loop: ContactLoop | string) => {
  if (typeof loop === 'string') throw new Error(loop);
  return loop.states.map(({ state, landing, resistance }) => [
    state === 'alarm' ? landing : state,
    Math.round(resistance.nominal),
  ]);
};

describe('the states of a loop, solved by hand', () => {
  it('of closed contacts in line, each with a bridge, and a resistor at the end', () => {
    const loop = loopFrom(
      '50 m to a : Closed breaks + bridged 4.7 kohm 50 m to b : Closed breaks - bridged 2.2 kohm terminate resistor 4.7 kohm',
    );
    expect(states(loop)).toEqual([
      ['normal', 4702],
      [1, 9402],
      [2, 6902],
      ['all alarms', 11_602],
      ['cut', Number.POSITIVE_INFINITY],
      ['short', 0],
    ]);
  });

  it('of open contacts across, each through a resistor, and a resistor at the end', () => {
    const loop = loopFrom(
      '50 m to a : Open across through 4.7 kohm 50 m to b : Open across terminate resistor 4.7 kohm',
    );
    // The alarm of a: 1 ohm, then 4700 ohm beside 1 + 4700 ohm; that of b shorts the end: 2 ohm.
    expect(states(loop)).toEqual([
      ['normal', 4702],
      [1, 2351],
      [2, 2],
      ['all alarms', 2],
      ['cut', Number.POSITIVE_INFINITY],
      ['short', 0],
    ]);
  });

  it('of closed contacts without any resistor: the last one closes the loop', () => {
    const loop = loopFrom('50 m to a : Closed breaks + 50 m to b : Closed across');
    expect(states(loop)).toEqual([
      ['normal', 2],
      [1, Number.POSITIVE_INFINITY],
      [2, Number.POSITIVE_INFINITY],
      ['all alarms', Number.POSITIVE_INFINITY],
      ['cut', Number.POSITIVE_INFINITY],
      ['short', 0],
    ]);
  });

  it('counts the resistor that is fixed inside a contact', () => {
    expect(states(loopFrom('50 m to a : Fixed breaks +'))[0]).toEqual(['normal', 3301]);
  });

  it('reaches over the tolerances: 5 % of resistors and of cable', () => {
    const loop = loopFrom('50 m to a : Closed breaks + terminate resistor 4.7 kohm');
    if (typeof loop === 'string') throw new Error(loop);
    const [{ resistance }] = loop.states as [ContactLoop['states'][number]];
    expect(resistance).toEqual({
      nominal: expect.closeTo(4701, 6),
      low: expect.closeTo(4701 * 0.95, 6),
      high: expect.closeTo(4701 * 1.05, 6),
    });
    expect(loop.cable.nominal).toBeCloseTo(1, 9);
  });
});

describe('what the input reads', () => {
  const windows = 'reads fault below 2.5 kohm reads normal above 3.6 kohm below 6.2 kohm reads alarm above 7.5 kohm';

  it('is the reading that holds the whole range, or unsure', () => {
    const loop = loopFrom(
      '50 m to a : Closed breaks + bridged 4.7 kohm 50 m to b : Closed breaks + bridged 2.2 kohm terminate resistor 4.7 kohm',
      windows,
    );
    if (typeof loop === 'string') throw new Error(loop);
    expect(loop.states.map(({ reading }) => reading)).toEqual(['normal', 'alarm', 'unsure', 'alarm', 'alarm', 'fault']);
  });

  it('is not told where the input states none', () => {
    const loop = loopFrom('50 m to a : Closed breaks +', 'expects resistor 4.7 kohm');
    if (typeof loop === 'string') throw new Error(loop);
    expect(loop.states.every(({ reading }) => reading === undefined)).toBe(true);
  });

  it('tells which contact it is where bridges differ by more than their tolerance', () => {
    const told = (first: string, second: string) => {
      const loop = loopFrom(
        `50 m to a : Closed breaks + bridged ${first} 50 m to b : Closed breaks + bridged ${second} terminate resistor 4.7 kohm`,
      );
      return typeof loop === 'string' ? loop : loop.states.flatMap(({ toldApart }) => toldApart ?? []);
    };
    expect(told('4.7 kohm', '4.7 kohm')).toEqual([false, false]);
    expect(told('4.7 kohm', '10 kohm')).toEqual([true, true]);
  });
});

it('a meter on the lifted loop reads all of it from every landing', () => {
  const loop = loopFrom(
    '50 m to a : Open across through 1 kohm 50 m to b : Closed breaks + terminate resistor 4.7 kohm',
  );
  if (typeof loop === 'string') throw new Error(loop);
  // With contacts at rest: 4700 ohm at b and cable of 1 ohm from b to a to the panel.
  const nominal = loop.meter.map((reading) => (isUnknown(reading) ? reading.unknown : reading.nominal));
  expect(nominal).toEqual([expect.closeTo(4702, 6), expect.closeTo(4701, 6), expect.closeTo(4700, 6)]);
});

it.each([
  ['50 m to a : Closed', 'how the contact of a lies in the loop'],
  ['50 m to a : Odd', 'what a is on the loop'],
  ['50 m to a : Odd across', 'how the contact of a rests'],
  ['50 m to splice a breaks +', 'the contact of splice a'],
  ['5 m to second : Panel', 'which input reads the loop, panel or second'],
  [
    '5 m to a : Closed breaks + 5 m to b : Closed breaks + 5 m to panel',
    'the resistances of a ring: one run of it must be left out',
  ],
])('says what is missing: %s', (statements, reason) => {
  expect(loopFrom(statements)).toBe(reason);
});

it('takes ten thousand contacts', () => {
  const chain = Array.from({ length: 10_000 }, (_, index) => `1 m to c${index} : Closed breaks + bridged 1 kohm`);
  const loop = loopFrom(`${chain.join(' ')} terminate resistor 1 kohm`);
  if (typeof loop === 'string') throw new Error(loop);
  // 0.02 ohm for each metre out and back.
  expect(loop.states[0]?.resistance.nominal).toBeCloseTo(1200, 6);
  expect(loop.states[10_000]?.resistance.nominal).toBeCloseTo(2200, 6);
  expect(loop.states[10_001]?.resistance.nominal).toBeCloseTo(10_001_200, 3);
});
