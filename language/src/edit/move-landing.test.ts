import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hostOf } from '../testing/check-text.js';
import { Project } from '../workspace/project.js';
import { moveLanding, staleLengthRemark } from './move-landing.js';
import { applyChanges } from './safe-fixes.js';

const file = 'test.pair';
const textOf = (lines: string) => `device Board { port field : rs485 }
store s {
  bus b : modbus-rtu 9600 {
${lines}
  }
}
`;

function busIn(text: string) {
  const project = new Project(hostOf({ [file]: text }));
  project.add(file);
  return project.storesOf(file)[0]!.buses[0]!;
}

/** The lines of the bus after a move; what refused it, when it was refused. */
function moved(lines: string, name: string, after: string | undefined): string {
  const text = textOf(lines);
  const bus = busIn(text);
  const indexOf = (landing: string) => bus.landings.findIndex((one) => one.name === landing);
  const move = moveLanding(bus, indexOf(name), after === undefined ? undefined : indexOf(after), () => text);
  if ('refused' in move) return move.refused;
  const result = applyChanges(text, move.changes);
  const [before = '', behind = ''] = textOf('\u0000').split('\u0000');
  expect(result.startsWith(before) && result.endsWith(behind)).toBe(true);
  return result.slice(before.length, -behind.length).trimEnd();
}

const chain = `    from head : Board
    10 ft to a : Board address 1 // by the door
    // over the arch
    20 ft to b : Board address 2
    tap 2 ft to probe : Board
    30 ft to c : Board address 3`;

describe('moving a landing', () => {
  it('takes its line, its comments and what hangs at it along, and marks the lengths that hold no longer', () => {
    expect(moved(chain, 'b', 'c')).toBe(`    from head : Board
    10 ft to a : Board address 1 // by the door
    30 ft to c : Board address 3 // ${staleLengthRemark}
    // over the arch
    20 ft to b : Board address 2 // ${staleLengthRemark}
    tap 2 ft to probe : Board`);
    expect(moved(chain, 'b', 'head')).toBe(`    from head : Board
    // over the arch
    20 ft to b : Board address 2 // ${staleLengthRemark}
    tap 2 ft to probe : Board
    10 ft to a : Board address 1 // by the door; ${staleLengthRemark}
    30 ft to c : Board address 3 // ${staleLengthRemark}`);
  });

  it('puts it under the heading of where it goes, and says so where one parts it from what hangs at it', () => {
    const areas = chain.replace('    30 ft', '    area Back\n    30 ft');
    expect(moved(areas, 'a', 'c')).toBe(`    from head : Board
    // over the arch
    20 ft to b : Board address 2 // ${staleLengthRemark}
    tap 2 ft to probe : Board
    area Back
    30 ft to c : Board address 3
    10 ft to a : Board address 1 // by the door; ${staleLengthRemark}`);
    expect(moved(chain.replace('    tap', '    area Back\n    tap'), 'b', 'c')).toMatch(
      /^An area begins between b and/,
    );
  });

  it('leaves the first landing without a length, and keeps the run that is still the same', () => {
    // The cable between head and a stays the same 10 ft, walked the other way.
    expect(moved(chain, 'head', 'a')).toBe(`    from a : Board address 1 // by the door
    10 ft to head : Board
    // over the arch
    20 ft to b : Board address 2 // ${staleLengthRemark}
    tap 2 ft to probe : Board
    30 ft to c : Board address 3`);
    expect(moved(chain, 'c', undefined)).toBe(`    from c : Board address 3
    30 ft to head : Board // ${staleLengthRemark}
    10 ft to a : Board address 1 // by the door
    // over the arch
    20 ft to b : Board address 2
    tap 2 ft to probe : Board`);
  });

  it('hangs a tap at another landing', () => {
    expect(moved(chain, 'probe', 'a')).toBe(`    from head : Board
    10 ft to a : Board address 1 // by the door
    tap 2 ft to probe : Board // ${staleLengthRemark}
    // over the arch
    20 ft to b : Board address 2
    30 ft to c : Board address 3`);
  });

  it('changes nothing when a landing is put where it is', () => {
    expect(moved(chain, 'b', 'a')).toBe(chain);
    expect(moved(chain, 'probe', 'b')).toBe(chain);
    expect(moved(chain, 'head', undefined)).toBe(chain);
    expect(moved(chain, 'b', 'b')).toBe(chain);
  });

  it('moves from one stroke of the pen to another', () => {
    const star = `${chain}\n    from b\n    5 ft to d : Board`;
    expect(moved(star, 'a', 'd')).toBe(`    from head : Board
    // over the arch
    20 ft to b : Board address 2 // ${staleLengthRemark}
    tap 2 ft to probe : Board
    30 ft to c : Board address 3
    from b
    5 ft to d : Board
    10 ft to a : Board address 1 // by the door; ${staleLengthRemark}`);
    expect(moved(star, 'b', 'c')).toBe('b is landed at 2 places of the text, so it has to be moved there.');
  });

  it('says why it does not', () => {
    expect(moved('    from a : Board\n    3 ft to b : Board 4 ft to c : Board', 'b', 'c')).toMatch(
      /holds several statements/,
    );
    expect(moved('    from a : Board\n    from b : Board\n    4 ft to c : Board', 'a', 'c')).toMatch(
      /No cable leads to a/,
    );
    expect(moved(`${chain}\n    from d : Board\n    4 ft to e : Board`, 'd', 'a')).toMatch(
      /stretch of the bus begins at d/,
    );
    expect(moved(chain, 'probe', undefined)).toMatch(/hangs on a tap/);
  });

  it('keeps every landing, property and length of any chain, in the order asked for', () => {
    const size = fc.integer({ min: 2, max: 9 });
    fc.assert(
      fc.property(size, fc.nat(8), fc.integer({ min: -1, max: 8 }), fc.boolean(), (count, what, where, windows) => {
        const landing = what % count;
        const after = where < 0 ? -1 : where % count;
        const lines = Array.from({ length: count }, (_, index) =>
          index ? `    ${10 + index} ft to n${index} : Board address ${index}` : '    from n0 : Board address 0',
        );
        const text = windows ? textOf(lines.join('\n')).replaceAll('\n', '\r\n') : textOf(lines.join('\n'));
        const bus = busIn(text);
        const move = moveLanding(bus, landing, after < 0 ? undefined : after, () => text);
        if ('refused' in move) throw new Error(move.refused);
        const now = busIn(applyChanges(text, move.changes));
        const rest = bus.landings.map(({ name }) => name).filter((name) => name !== `n${landing}`);
        const position = after < 0 ? 0 : after === landing ? landing : rest.indexOf(`n${after}`) + 1;
        const expected = [...rest.slice(0, position), `n${landing}`, ...rest.slice(position)];
        expect(now.landings.map(({ name }) => name)).toEqual(expected);
        expect(now.landings.map(({ name, address }) => [name, address?.value])).toEqual(
          expected.map((name) => [name, Number(name.slice(1))]),
        );
        const lengths = (runs: typeof bus.runs) => runs.map(({ length }) => length).toSorted();
        expect(lengths(now.runs)).toEqual(lengths(bus.runs));
      }),
    );
  });
});
