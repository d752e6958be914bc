/** Every sample, whole and cut short anywhere: nothing throws, nothing is lost, nothing depends on the order. */
import { createStudy } from '@fieldpair/shared';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Project } from '../language/src/workspace/project.js';
import { projectOf, sampleTexts, unsimulatedProjectOf } from './testing/samples.js';

const told = (project: Project) =>
  project.check().findings.map(({ rule, message, place }) => `${place.file}:${place.start} ${rule} ${message}`);

const tokenEnds = (text: string) => [...text.matchAll(/[^\s]+/g)].map(({ index, 0: token }) => index + token.length);

describe('the samples', () => {
  it.each([...sampleTexts.keys()])('%s may end after any of its words', (file) => {
    const text = sampleTexts.get(file) ?? '';
    const project = unsimulatedProjectOf(sampleTexts);
    for (const end of tokenEnds(text)) {
      project.add(file, text.slice(0, end));
      for (const finding of project.findingsOf(file)) {
        expect(finding.rule).not.toBe('internal-error');
        for (const fix of finding.fixes()) expect(fix.title).not.toBe('');
      }
    }
  });

  it('say the same in whatever order they are read', () => {
    const expected = told(unsimulatedProjectOf(sampleTexts));
    fc.assert(
      fc.property(fc.shuffledSubarray([...sampleTexts], { minLength: sampleTexts.size }), (order) => {
        expect(told(unsimulatedProjectOf(new Map(order)))).toEqual(expected);
      }),
      { numRuns: 20 },
    );
  });

  it('say the same after edits as when read anew', () => {
    const files = [...sampleTexts.keys()];
    const edit = fc.record({
      file: fc.constantFrom(...files),
      at: fc.nat(8000),
      drop: fc.nat(30),
      insert: fc.constantFrom('', ' ', '}', '3 ft ', 'x', '"'),
    });
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 6 }), (edits) => {
        const now = new Map(sampleTexts);
        const project = unsimulatedProjectOf(now);
        project.check();
        for (const { file, at, drop, insert } of edits) {
          const text = now.get(file) ?? '';
          now.set(file, text.slice(0, at) + insert + text.slice(at + drop));
          project.add(file, now.get(file));
          project.findingsOf(file);
        }
        expect(told(project)).toEqual(told(unsimulatedProjectOf(now)));
      }),
      { numRuns: 40 },
    );
  });
});

/** One store whose bus has so many nodes. */
const storeOf = (nodes: number) =>
  `device Box { port field : rs485 { load 1/8 } }\nstore s {\n  bus b : rs485 9600 {\n    from n0 : Box\n${Array.from(
    { length: nodes },
    (_, index) => `    3 ft to n${index + 1} : Box`,
  ).join('\n')}\n  }\n}\n`;

describe('the length of a bus', () => {
  it('is the sum of its runs, however they are written down', () => {
    const run = fc.record({
      feet: fc.integer({ min: 1, max: 500 }),
      metric: fc.boolean(),
      tap: fc.boolean(),
      from: fc.nat(30),
    });
    fc.assert(
      fc.property(fc.array(run, { minLength: 1, maxLength: 30 }), (runs) => {
        const lines = runs.flatMap(({ feet, metric, tap, from }, index) => [
          ...(from % 5 === 0 ? [`from n${from % (index + 1)}`] : []),
          `${tap ? 'tap ' : ''}${metric ? `${feet} m` : `${feet} ft`} to n${index + 1} : Box`,
        ]);
        const text = `device Box { port f : rs485 }\nstore s { bus b : rs485 { from n0 : Box\n${lines.join('\n')}\n} }`;
        const project = projectOf(new Map([['s.pair', text]]));
        const [store] = project.storesOf('s.pair');
        // One foot is 0.3048 m (NIST SP 811, B.6).
        const metres = runs.reduce((sum, { feet, metric }) => sum + (metric ? feet : feet * 0.3048), 0);
        expect(createStudy(store!, store!.buses[0]!).length).toBeCloseTo(metres, 6);
      }),
      { numRuns: 100 },
    );
  });
});

describe('the time of a check', () => {
  it('grows in proportion to the text', () => {
    const timeOf = (nodes: number) => {
      const text = storeOf(nodes);
      const times = Array.from({ length: 5 }, () => {
        const began = performance.now();
        projectOf(new Map([['s.pair', text]])).check();
        return performance.now() - began;
      });
      return Math.min(...times);
    };
    timeOf(2000);
    // Twice the text in twice the time; a quadratic step would take four times. Tried again where the machine was busy.
    const ratios = () => {
      const [one = 1, two = 1, four = 1, eight = 1] = [2000, 4000, 8000, 16000].map(timeOf);
      return [two / one, four / two, eight / four];
    };
    const isLinear = () => ratios().reduce((product, ratio) => product * ratio, 1) < 24;
    expect(isLinear() || isLinear() || isLinear()).toBe(true);
  });
});

/** A bus of ten thousand devices beside a repeater that could divide it. */
const wiredOf = (line: (index: number) => string) => `cable P { conductor 22 AWG impedance 120 ohm }
device Box { port f : rs485 { load 1/8 } }
device Joiner { role repeater port a : rs485 { load 1/8 } port b : rs485 { load 1/8 } }
store s {
  bus b : rs485 9600 on P {
    from n0 : Box
${Array.from({ length: 9999 }, (_, index) => `    ${line(index + 1)}`).join('\n')}
  }
}
`;

describe('bad input', () => {
  it.each([
    ['a line of 10 MB', `store s { // ${'x'.repeat(10_000_000)}\n}`],
    [
      'an address of 30 digits',
      'device Box { port f : rs485 }\nstore s { bus b : modbus-rtu 9600 { from a : Box address 123456789012345678901234567890 } }',
    ],
    [
      'lengths that cannot be',
      'device Box { port f : rs485 }\nstore s { bus b : rs485 9600 { from a : Box\n 0 ft to b : Box\n -3 ft to c : Box\n 1e308 ft to d : Box } }',
    ],
    ['a line of 10 MB that says nothing', `store s { ${'x '.repeat(5_000_000)}`],
    ['ten thousand lines that stop short', `store s { bus b : rs485 {\n${'3 ft to\nfrom\n'.repeat(5000)}} }`],
    ['ten thousand nodes in a star', wiredOf((index) => `from n0\n 400 ft to n${index} : Box`)],
    [
      'ten thousand nodes in a ring',
      `${wiredOf((index) => `400 ft to n${index} : Box`)}`.replace(/(n9999 : Box)/, '$1\n 3 ft to n0'),
    ],
    ['ten thousand nodes on taps', wiredOf((index) => `tap 400 ft to n${index} : Box`)],
    ['control characters', '\u0000\u0001store \u202E s {'],
    ['nothing but braces', '{'.repeat(5000)],
    ['deep comments', '/*'.repeat(5000)],
  ])('%s gets findings and no failure', (_, text) => {
    const findings = projectOf(new Map([['s.pair', text]])).check().findings;
    expect(findings.filter(({ rule }) => rule === 'internal-error')).toEqual([]);
    for (const finding of findings.slice(0, 100)) for (const { title } of finding.fixes()) expect(title).not.toBe('');
  });

  it('any bytes that are a text get findings and no failure', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
        const text = new TextDecoder().decode(bytes);
        const { findings } = projectOf(new Map([['s.pair', text]])).check();
        expect(findings.filter(({ rule }) => rule === 'internal-error')).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  it('files that import each other in a ring, and themselves, are each read once', () => {
    const ring = Array.from({ length: 200 }, (_, index) => {
      const text = `import "f${(index + 1) % 200}.pair"\nimport "f${index}.pair"\ncable C${index} { impedance 120 ohm }\n`;
      return [`f${index}.pair`, text] as const;
    });
    const { files, findings } = projectOf(new Map(ring)).check();
    expect(files).toBe(200);
    expect(findings.filter(({ rule }) => rule === 'import-cycle')).toHaveLength(400);
  });

  it('names each length that cannot be', () => {
    const text =
      'device Box { port f : rs485 }\nstore s { bus b : rs485 9600 { from a : Box\n 0 ft to b : Box\n -3 ft to c : Box\n 1e308 ft to d : Box } }';
    const findings = projectOf(new Map([['s.pair', text]])).check().findings;
    expect(findings.filter(({ rule }) => rule === 'value-impossible')).toHaveLength(3);
  });
});
