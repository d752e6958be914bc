/** What every rule promises: its page, its examples, and fixes that mend without breaking. */
import { type Finding, rules, severities } from '@fieldpair/shared';
import { describe, expect, it } from 'vitest';
import { projectOf } from '../language/src/testing/check-text.js';
import { fixText } from '../language/src/testing/fix-text.js';

/** Import rules need a second file; it is there for all examples. */
const others = { 'other.pair': 'import "circle.pair"\n', 'circle.pair': 'import "other.pair"\n' };

function findingsOf(text: string): Finding[] {
  const project = projectOf({ ...others, 'test.pair': text });
  return project.check().findings.filter(({ place, waived }) => place.file === 'test.pair' && !waived);
}

const counts = (findings: readonly Finding[]) => {
  const found: Record<string, number> = {};
  for (const { rule } of findings) found[rule] = (found[rule] ?? 0) + 1;
  return found;
};

/** Rules whose examples one text cannot hold: they need an unreadable file, or a mistake in the program itself. */
const beyondText = new Set(['import-unreadable', 'internal-error']);

describe('the list of rules', () => {
  it('has unique ids, legal severities and whole pages', () => {
    expect(new Set(rules.map(({ id }) => id)).size).toBe(rules.length);
    for (const { id, severity, explanation } of rules) {
      expect(severities, id).toContain(severity);
      expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
      for (const [part, text] of Object.entries(explanation)) expect(text.length, `${id}: ${part}`).toBeGreaterThan(0);
    }
  });

  it('makes no limit that is only remembered an error', () => {
    for (const { id, scope, severity, explanation } of rules) {
      if (scope === 'text') continue;
      const remembered =
        explanation.sources.length > 0 && explanation.sources.every((source) => source.includes('from memory'));
      if (remembered) expect(severity, id).not.toBe('error');
    }
  });
});

/** Rules whose finding no edit of the text can mend: what is missing has to be learnt, or decided beyond this store. */
const withoutFix = new Set([
  // Cable that nobody has measured yet, or that has to be laid elsewhere.
  ...['island', 'taps-add-up', 'tolerance-close'],
  ...['devices-too-far-apart', 'wire-too-thin-for-length', 'nodes-over-budget', 'run-too-long', 'cords-too-long'],
  ...['cable-too-warm', 'link-without-device', 'cable-class-unstated', 'cable-unstated'],
  // What lies beyond the text: other hardware, another way for the cable, an input that watches more.
  ...['input-missing', 'input-doubled', 'contacts-over-limit', 'loop-resistance-over-limit', 'loop-unsupervised'],
  ...[
    'draw-unstated',
    'source-missing',
    'source-doubled',
    'source-overload',
    'class-two-exceeded',
    'run-over-current',
    'mains-beside',
  ],
  ...['supply-form-mismatch', 'supply-too-high', 'drop-over-advice'],
  // Which device leads, what a text or a name was meant to be, why a finding may stand, where a file is.
  ...['no-head', 'syntax', 'duplicate-name', 'value-impossible', 'pen-missing', 'waiver-unreasoned', 'import-missing'],
  // Somebody else's store may use it.
  'unused-entry',
]);

describe.each(rules.filter(({ id }) => !beyondText.has(id)))('$id', ({ id, explanation }) => {
  it('finds its mistake once in the bad example and not in the good one', () => {
    expect(counts(findingsOf(explanation.bad))[id]).toBe(1);
    expect(counts(findingsOf(explanation.good))[id]).toBeUndefined();
  });

  it('mends it with each of its fixes and makes nothing new', () => {
    const before = findingsOf(explanation.bad);
    const finding = before.find(({ rule }) => rule === id);
    const known = counts(before);
    expect((finding?.fixes().length ?? 0) === 0, 'a rule that has no fix is listed above').toBe(withoutFix.has(id));
    for (const [index, { title }] of (finding?.fixes() ?? []).entries()) {
      const after = counts(findingsOf(fixText(explanation.bad, finding as Finding, index, others)));
      expect(after[id], title).toBeUndefined();
      // A fix that leaves a catalogue entry unused is right to do so.
      after['unused-entry'] = 0;
      for (const [rule, count] of Object.entries(after))
        expect(known[rule] ?? 0, `${title}: ${rule}`).toBeGreaterThanOrEqual(count);
    }
  });
});
