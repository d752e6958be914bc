/**
 * How often a slip of the hand is told with the right word: one letter dropped, doubled, replaced, or swapped with the
 * next, which are four fifths of all slips of typists (F. J. Damerau, 'A technique for computer detection and
 * correction of spelling errors', Communications of the ACM 7, 1964).
 */
import { busKinds, units } from '@fieldpair/shared';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { applyChanges, changesOfFix } from '../language/src/edit/safe-fixes.js';
import { keywords } from '../language/src/read/scanner.js';
import { sampleTexts, unsimulatedProjectOf } from './testing/samples.js';

const slips: readonly ((word: string, at: number, letter: string) => string)[] = [
  (word, at) => word.slice(0, at) + word.slice(at + 1),
  (word, at) => word.slice(0, at + 1) + word.slice(at),
  (word, at, letter) => word.slice(0, at) + letter + word.slice(at + 1),
  (word, at) => word.slice(0, at) + (word[at + 1] ?? '') + word[at] + word.slice(at + 2),
];
const slip = fc.record({
  file: fc.constantFrom(...sampleTexts.keys()),
  word: fc.nat(100_000),
  at: fc.nat(100),
  slip: fc.constantFrom(...slips),
  letter: fc.constantFrom(...'abcdefghijklmnopqrstuvwxyz'),
});

/** Comments and texts in quotes are passed over. */
const token = /\/\/[^\n]*|\/\*[\s\S]*?\*\/|"(?:\\.|[^"\\\n])*"|[A-Za-z_]\w*(?:-\w+)*/g;

/**
 * Of so many single slips in words of the samples, the shares with which a fix gives the text back as it was, with
 * which the first fix does, and with which nothing else is told that was not told before.
 */
function measure(runs: number, isOfInterest: (word: string) => boolean) {
  const checked = (file: string, text: string) => {
    const project = unsimulatedProjectOf(new Map(sampleTexts).set(file, text), [file]);
    return { project, findings: project.findingsOf(file) };
  };
  const sound = new Map([...sampleTexts].map(([file, text]) => [file, checked(file, text).findings.length]));
  let [all, offered, first, alone] = [0, 0, 0, 0];
  for (const made of fc.sample(slip, runs)) {
    const { file } = made;
    const text = sampleTexts.get(file)!;
    const words = [...text.matchAll(token)].filter(({ 0: word }) => isOfInterest(word));
    const { 0: word, index } = words[made.word % words.length]!;
    const wrong = made.slip(word, made.at % word.length, made.letter);
    // Nothing at all and another word that is right are no slips that could be seen.
    if (wrong === word || wrong === '' || isOfInterest(wrong)) continue;
    const slipped = text.slice(0, index) + wrong + text.slice(index + word.length);
    const { project, findings } = checked(file, slipped);
    const mended = findings
      .filter(({ place }) => place.start <= index && index < place.end)
      .flatMap((finding) =>
        finding.fixes().map((fix) => applyChanges(slipped, changesOfFix(project, file, finding, fix))),
      );
    all++;
    if (mended[0] === text) first++;
    if (mended.includes(text)) offered++;
    if (findings.length === sound.get(file)! + 1) alone++;
  }
  return { all, offered: offered / all, first: first / all, alone: alone / all };
}

it('tells slips in keywords with the right word, and nothing else because of them', () => {
  const { all, offered, first, alone } = measure(1500, (word) => keywords.has(word));
  expect(all).toBeGreaterThan(1200);
  expect(offered).toBeGreaterThan(0.99);
  expect(first).toBeGreaterThan(0.98);
  expect(alone).toBeGreaterThan(0.99);
});

it('tells slips in kinds of bus and units so, where they are of more than one letter', () => {
  const words = new Set([...busKinds, ...units.keys()].filter((word) => 1 < word.length && !keywords.has(word)));
  const { all, offered, first, alone } = measure(1500, (word) => words.has(word));
  expect(all).toBeGreaterThan(1200);
  expect(offered).toBeGreaterThan(0.97);
  expect(first).toBeGreaterThan(0.9);
  expect(alone).toBeGreaterThan(0.96);
});
