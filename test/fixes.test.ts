/** Every fix of every finding in the samples: it mends what it is for, and breaks nothing else. */
import type { Finding } from '@fieldpair/shared';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { applyChanges, changesOfFix } from '../language/src/edit/safe-fixes.js';
import { formatText } from '../language/src/format/format.js';
import { projectOf, sampleTexts, unsimulatedProjectOf } from './testing/samples.js';

const stores = [...sampleTexts.keys()].filter((file) => /^store /m.test(sampleTexts.get(file) ?? ''));

/** What is wrong, by rule and landing; information is no fault. */
const faults = (findings: readonly Finding[]) => {
  const counts = new Map<string, number>();
  for (const { rule, severity, waived } of findings) {
    if (!waived && severity !== 'info') counts.set(rule, (counts.get(rule) ?? 0) + 1);
  }
  return counts;
};

it.each(stores)('%s is mended by each fix that it is offered', (file) => {
  const project = projectOf(sampleTexts, [file]);
  const findings = project.findingsOf(file);
  const before = faults(findings);
  for (const finding of findings) {
    for (const fix of finding.waived ? [] : finding.fixes()) {
      const changes = changesOfFix(project, file, finding, fix);
      const edited = new Map(sampleTexts);
      for (const one of new Set(changes.map((change) => change.file))) {
        const ofFile = changes.filter((change) => change.file === one);
        edited.set(one, applyChanges(sampleTexts.get(one) ?? '', ofFile));
      }
      const label = `${finding.rule} ${finding.at ?? ''}: ${fix.title}`;
      const mended = projectOf(edited, [file]);
      const left = mended.findingsOf(file);
      const after = faults(left);
      const same = left.filter(
        ({ rule, bus, message }) => rule === finding.rule && bus === finding.bus && message === finding.message,
      );
      expect(same, label).toEqual([]);
      for (const [rule, count] of after)
        expect(count, `${label} makes ${rule}`).toBeLessThanOrEqual(before.get(rule) ?? 0);
      const text = edited.get(file) ?? '';
      expect(formatText(text), `${label} is written as the formatter would`).toBe(text);
    }
  }
});

/** Slips of whoever writes a line of a bus down, or wires it. */
const slips: readonly ((line: string, other: string) => string)[] = [
  () => '',
  (line, other) => `${line}\n${other}`,
  (line) => line.replace(/ terminate (switch|resistor [\d.]+ ohm)/, ''),
  (line) => `${line} terminate resistor 120 ohm`,
  (line) => `${line} crossed // as found`,
  (line) => `${line} shield open`,
  (line) => line.replace(/address \d+/, 'address 250'),
  (line) => line.replace(/\d+ ft/, '3900 ft'),
  (line) => line.replace(/^( *)(?=\d)/, '$1tap '),
  (line) => line.replace(/^( *)tap /, '$1'),
  (line, other) => line.replace(/to \w+/, /to \w+/.exec(other)?.[0] ?? 'to nowhere'),
  (line) => line.replace(/ft to/, 'ft on BellWire18 to'),
  (line) => line.replace(/earthed at \S+/, 'earthed at compressor'),
  (line) => line.replace(/(bias at \S+) [\d.]+ ohm/, '$1 1500 ohm'),
  (line) => line.replace(/\.field\d?/, ''),
  (line) => line.replace(/\w+$/, ''),
  (line) => line.replace(/ on \w+/, ''),
  (line) => line.replace(/: \w+/, ''),
  (line) => line.replace(/\d+/, '1'),
  (line) => line.replace(/\d+/, '60'),
  (line) => line.replace(/ohm/, 'kohm'),
  (line) => line.replace(/ft/, 'm'),
  (line) => line.replace(/ft/, ''),
  (line) => line.replace(/switch/, 'resistor 90 ohm'),
  (line) => line.replace(/colours.*/, ''),
  (_, other) => other,
  (line, other) => `from ${/to (\S+)/.exec(other)?.[1] ?? 'nobody'}\n${line}`,
  (line, other) => `from ${/to (\S+)/.exec(line)?.[1] ?? 'nobody'}\n${other}`,
  (line) => `${line}\nbias at head 510 ohm`,
  (line) => `${line}\nambient 70 degC`,
  (line) => line.replace(/ft to/, 'ft built 40 ft to'),
  (line) => line.replace(/ft to/, 'ft beside mains to'),
  (line) => `${line} switch off`,
];

it('any few slips in a store are mended by what is offered, and nothing makes a text that cannot be read', () => {
  const files = stores;
  const slip = fc.record({ slip: fc.constantFrom(...slips), at: fc.nat(200), other: fc.nat(200) });
  fc.assert(
    fc.property(fc.constantFrom(...files), fc.array(slip, { minLength: 1, maxLength: 4 }), (file, made) => {
      const lines = (sampleTexts.get(file) ?? '').split('\n');
      const wired = [...lines.keys()].filter((index) => /^ {4}(\d|tap|from|shield|bias)/.test(lines[index] ?? ''));
      for (const { slip: apply, at, other } of made) {
        const index = wired[at % wired.length] ?? 0;
        lines[index] = apply(
          lines[index] ?? '',
          (sampleTexts.get(file) ?? '').split('\n')[wired[other % wired.length] ?? 0] ?? '',
        );
      }
      const files = new Map(sampleTexts).set(file, lines.join('\n'));
      const project = unsimulatedProjectOf(files, [file]);
      const findings = project.findingsOf(file);
      // What cannot be read, or is said in two ways, has to be settled first.
      fc.pre(findings.every(({ rule }) => rule !== 'syntax' && rule !== 'statement-repeated'));
      for (const finding of findings) {
        expect(finding.rule).not.toBe('internal-error');
        for (const fix of finding.fixes()) {
          const changes = changesOfFix(project, file, finding, fix);
          const edited = new Map(files);
          for (const one of new Set(changes.map((change) => change.file))) {
            edited.set(
              one,
              applyChanges(
                files.get(one) ?? '',
                changes.filter((change) => change.file === one),
              ),
            );
          }
          const mended = unsimulatedProjectOf(edited, [file]);
          const left = mended.findingsOf(file);
          const label = `${finding.rule}: ${fix.title}\n${edited.get(file)}`;
          expect(
            left.filter(({ rule }) => rule === 'syntax').map(({ message }) => message),
            label,
          ).toEqual([]);
          const alike = ({ rule, bus, message }: Finding) =>
            rule === finding.rule && bus === finding.bus && message === finding.message;
          // An unknown name is told at its first place only: mended there, it is told at the next.
          const name = (files.get(file) ?? '').slice(finding.place.start, finding.place.end);
          const mentions = (all: ReadonlyMap<string, string>) => (all.get(file) ?? '').split(name).length;
          const isMoved = finding.rule === 'unknown-name' && mentions(edited) < mentions(files);
          // Who makes the same mistake twice is told twice.
          if (!isMoved) expect(left.filter(alike).length, label).toBeLessThan(findings.filter(alike).length);
        }
      }
    }),
    { numRuns: 150 },
  );
});
