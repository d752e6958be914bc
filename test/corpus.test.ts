/** Every sample, whole and cut short anywhere: nothing throws, nothing is lost, nothing depends on the order. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Project } from '../language/src/workspace/project.js';

const samples = fileURLToPath(new URL('../samples', import.meta.url));
const texts = new Map(
  readdirSync(samples, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.pair'))
    .map((path) => [path.replaceAll('\\', '/'), readFileSync(join(samples, path), 'utf8')]),
);

function projectOf(files: ReadonlyMap<string, string>): Project {
  const project = new Project({
    resolve: (from, path) => relative(samples, join(samples, dirname(from), path)).replaceAll('\\', '/'),
    read: (file) => {
      const text = files.get(file);
      return text === undefined ? { problem: 'it does not exist', missing: true } : { text };
    },
  });
  for (const file of files.keys()) project.add(file);
  return project;
}

const told = (project: Project) =>
  project.check().findings.map(({ rule, message, place }) => `${place.file}:${place.start} ${rule} ${message}`);

const tokenEnds = (text: string) => [...text.matchAll(/[^\s]+/g)].map(({ index, 0: token }) => index + token.length);

describe('the samples', () => {
  it.each([...texts.keys()])('%s may end after any of its words', (file) => {
    const text = texts.get(file) ?? '';
    const project = projectOf(texts);
    for (const end of tokenEnds(text)) {
      project.add(file, text.slice(0, end));
      for (const finding of project.findingsOf(file)) {
        expect(finding.rule).not.toBe('internal-error');
        for (const fix of finding.fixes()) expect(fix.title).not.toBe('');
      }
    }
  });

  it('say the same in whatever order they are read', () => {
    const expected = told(projectOf(texts));
    fc.assert(
      fc.property(fc.shuffledSubarray([...texts], { minLength: texts.size }), (order) => {
        expect(told(projectOf(new Map(order)))).toEqual(expected);
      }),
      { numRuns: 20 },
    );
  });

  it('say the same after edits as when read anew', () => {
    const files = [...texts.keys()];
    const edit = fc.record({
      file: fc.constantFrom(...files),
      at: fc.nat(8000),
      drop: fc.nat(30),
      insert: fc.constantFrom('', ' ', '}', '3 ft ', 'x', '"'),
    });
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 6 }), (edits) => {
        const now = new Map(texts);
        const project = projectOf(now);
        project.check();
        for (const { file, at, drop, insert } of edits) {
          const text = now.get(file) ?? '';
          now.set(file, text.slice(0, at) + insert + text.slice(at + drop));
          project.add(file, now.get(file));
          project.findingsOf(file);
        }
        expect(told(project)).toEqual(told(projectOf(now)));
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
    ['control characters', '\u0000\u0001store \u202E s {'],
    ['nothing but braces', '{'.repeat(5000)],
    ['deep comments', '/*'.repeat(5000)],
  ])('%s gets findings and no failure', (_, text) => {
    const findings = projectOf(new Map([['s.pair', text]])).check().findings;
    expect(findings.filter(({ rule }) => rule === 'internal-error')).toEqual([]);
  });

  it('names each length that cannot be', () => {
    const text =
      'device Box { port f : rs485 }\nstore s { bus b : rs485 9600 { from a : Box\n 0 ft to b : Box\n -3 ft to c : Box\n 1e308 ft to d : Box } }';
    const findings = projectOf(new Map([['s.pair', text]])).check().findings;
    expect(findings.filter(({ rule }) => rule === 'value-impossible')).toHaveLength(3);
  });
});
