/** CAN, free topology and Ethernet: what the rules say of each, and what they must not say. */
import { describe, expect, it } from 'vitest';
import { checkText } from '../../../language/src/testing/check-text.js';
import { fixText } from '../../../language/src/testing/fix-text.js';
import { canExample, linkExample, segmentExample } from './other-example.js';

const told = (text: string) =>
  checkText(text)
    .filter(({ severity }) => severity !== 'info')
    .map(({ rule, at }) => (at === undefined ? rule : `${rule} ${at}`));
const first = (text: string, rule: string) => {
  const found = checkText(text, [rule])[0];
  if (!found) throw new Error(`${rule} found nothing`);
  return found;
};

const rc = (resistance: number) => `terminate resistor ${resistance} ohm capacitor 100 uF`;

describe('a free-topology segment', () => {
  it('may be a star, a tree or a ring, crossed wherever it likes', () => {
    const star = ['from head : Panel terminate resistor 52.3 ohm capacitor 100 uF'];
    for (const room of [1, 2, 3, 4])
      star.push('from head', `60 ft to room${room} : RoomUnit${room === 2 ? ' crossed' : ''}`);
    expect(told(segmentExample(star))).toEqual([]);
    const tree = [
      'from head : Panel',
      '60 ft to room1 : RoomUnit',
      'tap 300 ft to room2 : RoomUnit',
      `60 ft to room3 : RoomUnit ${rc(52.3)}`,
      'from room1',
      '90 ft to room4 : RoomUnit',
    ];
    expect(told(segmentExample(tree))).toEqual([]);
    const ring = [
      `from head : Panel ${rc(52.3)}`,
      '60 ft to room1 : RoomUnit',
      '60 ft to room2 : RoomUnit',
      '60 ft to head',
    ];
    expect(told(segmentExample(ring))).toEqual([]);
  });

  it('takes the terminator anywhere, and just one', () => {
    const chain = (head: string, room1: string, room2: string) =>
      segmentExample([
        `from head : Panel ${head}`,
        `60 ft to room1 : RoomUnit ${room1}`,
        `60 ft to room2 : RoomUnit ${room2}`,
      ]);
    expect(told(chain('', rc(52.3), ''))).toEqual([]);
    expect(told(chain('', '', rc(52.3)))).toEqual([]);
    expect(told(chain('', '', ''))).toEqual(['segment-unterminated']);
    expect(told(chain(rc(105), '', rc(105)))).toEqual([]);
    expect(told(chain(rc(105), '', ''))).toEqual(['end-unterminated room2']);
    expect(told(chain(rc(105), rc(105), rc(105)))).toEqual(['terminator-midline room1']);
    expect(told(chain(rc(52.3), '', rc(52.3)))).toEqual(['terminator-value head', 'terminator-value room2']);
    expect(told(chain('terminate resistor 52.3 ohm', '', ''))).toEqual(['terminator-value head']);
    expect(first(chain('terminate resistor 52.3 ohm', '', ''), 'terminator-value').message).toContain(
      'without a capacitor',
    );
  });

  it('is mended by what its form takes', () => {
    const text = segmentExample([`from head : Panel ${rc(105)}`, '60 ft to room1 : RoomUnit']);
    const mended = fixText(text, first(text, 'end-unterminated'));
    expect(mended).toContain('room1 : RoomUnit terminate resistor 105 ohm capacitor 100 uF');
    expect(told(mended)).toEqual([]);
    const bare = segmentExample(['from head : Panel', '60 ft to room1 : RoomUnit']);
    for (const fix of [0, 1]) expect(told(fixText(bare, first(bare, 'segment-unterminated'), fix))).toEqual([]);
  });

  it('keeps its stubs short where it is a bus, and only there', () => {
    const withStub = (terminator: string) =>
      segmentExample([
        `from head : Panel ${rc(terminator === 'bus' ? 105 : 52.3)}`,
        '60 ft to room1 : RoomUnit',
        'tap 12 ft to room2 : RoomUnit',
        `60 ft to room3 : RoomUnit ${terminator === 'bus' ? rc(105) : ''}`,
      ]);
    expect(told(withStub('bus'))).toEqual(['tap-too-long room2']);
    expect(told(withStub('free'))).toEqual([]);
  });

  it('that is a chain may run on as a bus where it is too long for a segment of free form', () => {
    const text = segmentExample([
      `from head : Panel ${rc(52.3)}`,
      '1500 ft to room1 : RoomUnit',
      '1200 ft to room2 : RoomUnit',
    ]);
    expect(told(text)).toEqual(['bus-too-long']);
    expect(told(fixText(text, first(text, 'bus-too-long')))).toEqual([]);
  });

  it('is held against no class where its cable states none, and told so', () => {
    const far = (cable: string) =>
      segmentExample(
        [`from head : Panel ${rc(52.3)}`, '700 ft to room1 : RoomUnit', '750 ft to room2 : RoomUnit'],
        cable,
      );
    expect(told(far('class level-4'))).toEqual(['devices-too-far-apart room2']);
    expect(told(far('velocity 60 %'))).toEqual([]);
    expect(checkText(far('velocity 60 %'), ['cable-class-unstated'])).toHaveLength(1);
  });
});

describe('a CAN bus', () => {
  const line = (last = 'terminate resistor 120 ohm') => [
    'from head : RackHead terminate switch',
    '60 ft to valve1 : ValveBoard address 1',
    `60 ft to valve2 : ValveBoard address 2 ${last}`,
  ];

  it('is a line with a terminator at each end', () => {
    expect(told(canExample(line()))).toEqual([]);
    expect(told(canExample(line('')))).toEqual(['end-unterminated valve2']);
    expect(told(canExample([...line(), 'from valve1', '30 ft to valve3 : ValveBoard address 3']))).toEqual([
      'branching valve1',
    ]);
    expect(told(canExample([...line(), '30 ft to head']))).toEqual(['closed-loop head']);
  });

  // ISO 11898-2:2003 as reprinted: 100 to 130 ohm; CiA 303-1 from memory: up to 300 ohm beyond 40 m.
  it.each([
    ['40 ft', 130, 0],
    ['40 ft', 99, 1],
    ['40 ft', 150, 1],
    ['400 ft', 150, 0],
    ['400 ft', 300, 0],
    ['400 ft', 301, 1],
  ])('of %s takes %i ohm at its end: %i findings', (length, resistance, count) => {
    const text = canExample([
      'from head : RackHead terminate switch',
      `${length} to valve1 : ValveBoard address 1 terminate resistor ${resistance} ohm`,
    ]);
    expect(checkText(text, ['terminator-value'])).toHaveLength(count);
  });

  it('takes no capacitor in series with its terminator', () => {
    const text = canExample(line('terminate resistor 120 ohm capacitor 10 nF'));
    expect(told(text)).toEqual(['terminator-value valve2']);
    expect(told(fixText(text, first(text, 'terminator-value')))).toEqual([]);
  });

  it('has stubs by its rate, each and all together (CiA table)', () => {
    const stubs = (each: string, rate: string) =>
      canExample(
        [
          'from head : RackHead terminate switch',
          ...[1, 2, 3, 4, 5, 6, 7].flatMap((at) => [
            `2 m to valve${at} : ValveBoard address ${at}`,
            `tap ${each} to probe${at} : ValveBoard address ${20 + at}`,
          ]),
          '1 m to last : ValveBoard address 40 terminate resistor 120 ohm',
        ],
        { rate, delay: '100 ns' },
      );
    expect(told(stubs('1.6 m', '1 Mbit/s'))).toHaveLength(7);
    expect(told(stubs('1.4 m', '1 Mbit/s'))).toEqual(['taps-add-up']);
    expect(told(stubs('1 m', '1 Mbit/s'))).toEqual([]);
    expect(told(stubs('1.6 m', '500 kbit/s'))).toEqual([]);
  });

  it('that is too long for its rate has one finding, whose fix is a rate that all devices have', () => {
    const text = canExample(
      ['from head : RackHead terminate switch', '420 ft to valve1 : ValveBoard address 1 terminate resistor 120 ohm'],
      { rate: '1 Mbit/s' },
    ).replaceAll('polarity required', 'polarity required\n    rates 20 kbit/s, 125 kbit/s, 1 Mbit/s');
    expect(told(text)).toEqual(['rate-too-fast-for-length']);
    expect(
      first(text, 'rate-too-fast-for-length')
        .fixes()
        .map(({ title }) => title),
    ).toEqual(['Run at 125 kbit/s']);
    expect(told(fixText(text, first(text, 'rate-too-fast-for-length')))).toEqual([]);
  });

  it('is an error only where the delays are stated', () => {
    const isolated = (delay?: string) =>
      checkText(
        canExample(
          [
            'from head : RackHead terminate switch',
            '80 ft to valve1 : ValveBoard address 1 terminate resistor 120 ohm',
          ],
          { rate: '1 Mbit/s', ...(delay === undefined ? {} : { delay }) },
        ),
        ['propagation-over-budget'],
      ).map(({ severity }) => severity);
    expect(isolated('400 ns')).toEqual(['error']);
    expect(isolated('300 ns')).toEqual([]);
    expect(isolated()).toEqual([]);
  });

  it('has lengths by the guide that it names', () => {
    const text = canExample(
      ['from head : RackHead terminate switch', '35 m to valve1 : ValveBoard address 1 terminate resistor 120 ohm'],
      { rate: '1 Mbit/s', delay: '100 ns' },
    );
    const guided = (name: string) => text.replace('shield earthed', `guide ${name}\n    shield earthed`);
    expect(told(text)).toEqual(['rate-too-fast-for-length']);
    expect(told(guided('cia'))).toEqual(['rate-too-fast-for-length']);
    expect(told(guided('iso'))).toEqual([]);
    expect(told(guided('usual'))).toEqual(['rate-too-fast-for-length', 'unknown-word']);
    expect(told(guided('iso').replace('can 1 Mbit/s', 'rs485 9600'))).toContain('statement-foreign');
  });

  it('samples where it says', () => {
    const sampling = (more: readonly string[]) =>
      checkText(
        canExample(
          [
            'from head : RackHead terminate switch',
            '70 ft to valve1 : ValveBoard address 1 terminate resistor 120 ohm',
            ...more,
          ],
          { rate: '1 Mbit/s', delay: '300 ns' },
        ),
        ['propagation-over-budget'],
      );
    expect(sampling([])).toEqual([]);
    expect(sampling(['sample at 75 %'])).toHaveLength(1);
  });
});

describe('Ethernet', () => {
  it('knows no ends, branches or islands: each run is a link', () => {
    const links = [1, 2, 3, 4].flatMap((jack) => [
      `from hub.p${jack}${jack === 1 ? ' : NetSwitch' : ''}`,
      `${60 * jack} ft to panel${jack} : Panel`,
    ]);
    expect(told(linkExample(links))).toEqual([]);
  });

  it('tells a jack with two cables once, and lands the other on a free one', () => {
    const text = linkExample(['from hub.p1 : NetSwitch', '60 ft to a : Panel', 'from hub.p1', '60 ft to b : Panel']);
    expect(told(text)).toEqual(['jack-shared hub.p1']);
    const mended = fixText(text, first(text, 'jack-shared'));
    expect(mended).toContain('from hub.p2');
    expect(told(mended)).toEqual([]);
  });

  it('has no chain from device to device', () => {
    expect(told(linkExample(['from hub.p1 : NetSwitch', '60 ft to a : Panel', '60 ft to b : Panel']))).toEqual([
      'jack-shared a',
    ]);
  });

  it.each([
    ['295 ft', []],
    ['300 ft', ['warning']],
    ['330 ft', ['error']],
  ])('of %s of fixed cable', (length, severities) => {
    const text = linkExample(['from hub.p1 : NetSwitch', `${length} to a : Panel`]);
    expect(checkText(text, ['run-too-long']).map(({ severity }) => severity)).toEqual(severities);
  });

  it('needs a category for its rate, and pairs', () => {
    expect(told(linkExample(['from hub.p1 : NetSwitch', '60 ft to a : Panel'], 'class level-4'))).toEqual([
      'cable-unsuited NetworkCable',
    ]);
  });
});

it('an example is sound', () => {
  expect(told(segmentExample([`from head : Panel ${rc(52.3)}`, '60 ft to room1 : RoomUnit']))).toEqual([]);
});
