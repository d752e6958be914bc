/** A rename changes no meaning: every mention still means what it meant, or the rename is refused before anything changes. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { applyChanges } from '../language/src/edit/safe-fixes.js';
import { Desk } from '../language/src/services/desk.js';
import { rename } from '../language/src/services/rename.js';
import { sampleTexts, unsimulatedProjectOf } from './testing/samples.js';

/** Two stores in files that see each other's catalogues, with names that are in use twice, and waivers of both kinds. */
const small = new Map([
  [
    'near.pair',
    'cable Pair { impedance 120 ohm }\ndevice Board {\n  revision A, B\n  port one : rs485 { reserved in A }\n  port two : rs485 { twin of one }\n}\n',
  ],
  [
    'far.pair',
    'cable Thick { impedance 100 ohm }\ndevice Panel { revision B, C port one : rs485 port three : rs485 }\n',
  ],
  [
    'hill.pair',
    `import "near.pair"
import "far.pair"
store hill {
  node a : Board revision B
  network plant { a }
  bus a1 : rs485 on Pair {
    area Cellar
    from a.one
    3 ft on Thick to splice s
    area "Cellar"
    3 ft to b : Panel revision C
    waive island at s because "x"
  }
  bus b1 : rs485 on Thick {
    area Attic
    from b.three
    3 ft to splice t
    3 ft to c : Panel
  }
  waive no-head at a1 because "x"
  waive no-head at t because "x"
  waive island at a.one because "x"
}
`,
  ],
  [
    'more.pair',
    'import "hill.pair"\nstore hill continued { bus c1 : rs485 on Thick { area Attic from c.one 2 ft to d : Panel } }\n',
  ],
  [
    'other.pair',
    'import "far.pair"\nimport "near.pair"\nstore dale { bus a1 : rs485 on Thick { from a : Panel revision B 3 ft to z : Board } }\n',
  ],
]);

/** All mentions in the order of files and texts: of each its kind, its place among them, and which of them declares it. */
function meanings(texts: ReadonlyMap<string, string>) {
  const project = unsimulatedProjectOf(texts);
  project.digestAll();
  const key = ({ file, start }: { file: string; start: number }) => `${file}:${start}`;
  const uses = [...texts.keys()]
    .flatMap((file) => project.usesOf(file))
    .sort((left, right) =>
      left.place.file < right.place.file
        ? -1
        : left.place.file > right.place.file
          ? 1
          : left.place.start - right.place.start,
    );
  const places = [...new Set(uses.map(({ place }) => key(place)))];
  const findings = [...texts.keys()]
    .flatMap((file) => project.findingsOf(file).map(({ rule }) => `${file} ${rule}`))
    .sort();
  return {
    project,
    uses,
    meant: uses.map(({ kind, place, target }) => [kind, places.indexOf(key(place)), places.indexOf(key(target))]),
    findings,
  };
}

it.each([
  ['the samples', sampleTexts, 60],
  ['a small plan with names in use twice', small, 400],
] as const)('of %s', (_, texts, numRuns) => {
  const before = meanings(texts);
  const names = [...new Set(before.uses.map(({ name }) => name))];
  const seen = { refused: 0, done: 0 };
  fc.assert(
    fc.property(
      fc.nat(1e6),
      fc.oneof(fc.constant('fresh'), fc.constantFrom(...names), fc.constantFrom(...names)),
      (at, name) => {
        const use = before.uses[at % before.uses.length]!;
        const desk = new Desk(before.project);
        const { file } = use.place;
        let edit: ReturnType<typeof rename>;
        try {
          edit = rename(desk, file, desk.rangeOf(use.place).start, name);
        } catch (error) {
          expect((error as Error).message).toMatch(/^a.* is called .* already; choose another name for /);
          expect(name).not.toBe('fresh');
          seen.refused++;
          return;
        }
        seen.done++;
        const renamed = new Map(texts);
        for (const [one, edits] of Object.entries(edit?.changes ?? {})) {
          const changes = edits.map(({ range, newText }) => ({
            file: one,
            start: desk.offsetOf(one, range.start),
            end: desk.offsetOf(one, range.end),
            text: newText,
          }));
          renamed.set(one, applyChanges(texts.get(one)!, changes));
        }
        const after = meanings(renamed);
        const label = `${use.kind} ${use.name} to ${name} in ${file}`;
        expect(after.meant, label).toEqual(before.meant);
        expect(after.findings, label).toEqual(before.findings);
        expect(after.uses.filter((one) => one.name === name).length).toBeGreaterThan(0);
      },
    ),
    { numRuns },
  );
  expect(seen.refused).toBeGreaterThan(0);
  expect(seen.done).toBeGreaterThan(numRuns / 4);
});
