/** Buses that one line cannot hold, divided: whatever they are like, every part keeps its limits, and none is spared. */
import type { Finding } from '@fieldpair/shared';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { applyChanges, changesOfFix } from '../language/src/edit/safe-fixes.js';
import { unsimulatedProjectOf } from './testing/samples.js';

/** Unsimulated: a part that keeps every limit of a document may still be told to have little margin, as any bus may. */
const projectOf = (text: string) => unsimulatedProjectOf(new Map([['test.pair', text]]));
const rules = ['bus-too-long', 'load-over-budget', 'repeater-needed'];

interface Plan {
  readonly kind: string;
  /** Feet to each device from the one before it. */
  readonly runs: readonly number[];
  readonly taps: readonly number[];
  readonly head: number;
  readonly load: number | undefined;
  readonly repeater: { readonly load: string; readonly near: string; readonly far: string };
  readonly bias: 'none' | 'needed' | 'written';
  readonly earthed: boolean;
}

const plans: fc.Arbitrary<Plan> = fc
  .record({
    kind: fc.constantFrom('modbus-rtu 19200 8E1', 'modbus-rtu 9600 8E1', 'bacnet-mstp 38400', 'rs485 19200'),
    runs: fc.oneof(
      fc.array(fc.integer({ min: 5, max: 60 }), { minLength: 33, maxLength: 110 }),
      fc.array(fc.integer({ min: 200, max: 3800 }), { minLength: 2, maxLength: 14 }),
      fc.array(fc.oneof(fc.integer({ min: 5, max: 60 }), fc.integer({ min: 500, max: 3000 })), {
        minLength: 5,
        maxLength: 60,
      }),
    ),
    tapShare: fc.constantFrom(0, 0.2),
    taps: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 111, maxLength: 111 }),
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    load: fc.constantFrom(1, 0.5, 0.125, undefined),
    repeater: fc.record({
      load: fc.constantFrom('load 1/8', 'load 1'),
      near: fc.constantFrom('terminator switch 120 ohm', ''),
      far: fc.constantFrom('terminator switch 120 ohm', 'terminator fixed 120 ohm', ''),
    }),
    bias: fc.constantFrom('none', 'none', 'needed', 'written'),
    earthed: fc.boolean(),
  })
  .map(({ tapShare, taps, at, ...plan }) => ({
    ...plan,
    head: Math.round(at * plan.runs.length),
    taps: plan.runs.flatMap((_, index) => (0 < index && taps[index]! < tapShare ? [index] : [])),
  })) as fc.Arbitrary<Plan>;

function textOf({ kind, runs, taps, head, load, repeater, bias, earthed }: Plan): string {
  const stated = load === undefined ? '' : `load ${load}`;
  const terminals = 'terminals + "A" - "B" shield "S"';
  const name = (position: number) => (position === head ? 'head' : `n${position}`);
  let address = 0;
  const landing = (position: number) =>
    `${name(position)}${position === head ? '' : ` : Board address ${++address}`}${position === 0 || position === runs.length ? ' terminate switch' : ''}`;
  const lines = runs.flatMap((length, index) => [
    `${length} ft to ${landing(index + 1)}`,
    ...(taps.includes(index) && index + 1 < runs.length ? [`tap 1 ft to t${index} : Board address ${++address}`] : []),
  ]);
  return `cable Pair22 { conductor 22 AWG stranded twisted pairs 1 shield foil drain impedance 120 ohm capacitance 12 pF/ft velocity 66 % }
device Panel { role head port field : rs485 { ${terminals} ${stated} terminator switch 120 ohm } }
device Board { port field : rs485 { ${terminals} ${stated} terminator switch 120 ohm address dial 1..247 ${bias === 'needed' ? 'bias needed' : ''} } }
device Joiner {
  role repeater
  port one : rs485 { ${terminals} ${repeater.load} ${repeater.near} }
  port two : rs485 { ${terminals} ${repeater.load} ${repeater.far} }
}
store hill {
  node head : Panel
  bus cases : ${kind} on Pair22 {
    from ${landing(0)}
${lines.map((line) => `    ${line}`).join('\n')}
${earthed ? '    shield earthed at head\n' : ''}${bias === 'written' ? '    bias at head 560 ohm\n' : ''}    colours + white - blue
  }
}
`;
}

const countsOf = (findings: readonly Finding[]) => {
  const counts = new Map<string, number>();
  for (const { rule, severity } of findings) {
    if (severity !== 'info') counts.set(rule, (counts.get(rule) ?? 0) + 1);
  }
  return counts;
};

it('every part of a random bus keeps its limits, and nothing new is wrong', () => {
  const seen = { fixes: 0, most: 0 };
  fc.assert(
    fc.property(plans, (plan) => {
      const text = textOf(plan);
      const project = projectOf(text);
      const before = project.findingsOf('test.pair');
      for (const finding of before.filter(({ rule }) => rules.includes(rule))) {
        if (!finding.fixes().length) expect(finding.message).toMatch(/no repeater|so that bias can hold each part/);
        for (const fix of finding.fixes()) {
          seen.fixes++;
          const after = applyChanges(text, changesOfFix(project, 'test.pair', finding, fix));
          const label = `${fix.title}\n${after}`;
          const left = projectOf(after).findingsOf('test.pair');
          seen.most = Math.max(seen.most, after.split('  bus ').length - 2);
          expect(
            left.filter(({ rule }) => rules.includes(rule)),
            label,
          ).toEqual([]);
          for (const [rule, count] of countsOf(left)) {
            expect(
              count,
              `${label} makes ${rule} ${left.filter((one) => one.rule === rule).map(({ message }) => message)}`,
            ).toBeLessThanOrEqual(countsOf(before).get(rule) ?? 0);
          }
        }
      }
    }),
    { numRuns: 150 },
  );
  expect(seen.fixes).toBeGreaterThan(80);
  expect(seen.most).toBeGreaterThan(3);
});

/** The fewest parts of a chain that starts at its head, by trying every way to cut it. */
function fewestParts({ kind, runs, load, repeater }: Plan): number {
  const limit = kind.startsWith('modbus-rtu 9600') ? 1000 / 0.3048 : 4000;
  const port = repeater.load === 'load 1' ? 1 : 1 / 8;
  const isKept = (begin: number, end: number) => {
    const [starts, ends] = [begin === 0, end === runs.length];
    const cable = runs.slice(Math.max(0, begin - 1), end).reduce((sum, run) => sum + run, 0) + (ends ? 0 : 3);
    const repeaters = (starts ? 0 : 1) + (ends ? 0 : 1);
    const devices = end - begin + 1;
    if (limit < cable) return false;
    if (load !== undefined) return devices * load + repeaters * port <= 32;
    return !kind.startsWith('modbus') || devices + repeaters <= 32;
  };
  const fewest = new Array<number>(runs.length + 2).fill(Number.POSITIVE_INFINITY);
  fewest[runs.length + 1] = 0;
  for (let begin = runs.length; 0 <= begin; begin--) {
    for (let end = begin; end <= runs.length; end++) {
      if (isKept(begin, end)) fewest[begin] = Math.min(fewest[begin]!, 1 + fewest[end + 1]!);
    }
  }
  return fewest[0]!;
}

it('takes as few repeaters as can be, and finds none only where there is no way', () => {
  const bare = plans.map((plan): Plan => ({ ...plan, head: 0, taps: [], bias: 'none' }));
  const counts = new Map<number, number>();
  fc.assert(
    fc.property(bare, (plan) => {
      const found = projectOf(textOf(plan))
        .findingsOf('test.pair')
        .filter(({ rule }) => rules.includes(rule));
      const fewest = fewestParts(plan);
      for (const finding of found) {
        const [fix] = finding.fixes();
        const parts = fix?.edits[0]?.kind === 'divide' ? fix.edits[0].added.length + 1 : Number.POSITIVE_INFINITY;
        expect(parts, finding.message).toBe(20 < fewest ? Number.POSITIVE_INFINITY : fewest);
        counts.set(parts, (counts.get(parts) ?? 0) + 1);
      }
      if (1 < fewest) expect(found.length).toBeGreaterThan(0);
    }),
    { numRuns: 150 },
  );
  expect(counts.size).toBeGreaterThan(4);
});
