/** Units, bounds and words of the reference against what the language takes when they are written. */
import { toSi, units, unitsOf } from '@fieldpair/shared';
import { describe, expect, it } from 'vitest';
import { exampleFile, exampleProject } from '../../../test/testing/reference-example.js';
import { readSheet } from '../read/read-sheet.js';
import { type Entry, entries, type FormName, type Value } from './index.js';

interface Spot {
  readonly start: number;
  readonly end: number;
}

/** Statements with all that they can have, where the example has less. */
const whole: Partial<Record<FormName, string>> = {
  PortTerminator: 'terminator fixed 120 ohm capacitor 1 nF',
  PortBias: 'bias fixed 510 ohm to + 510 ohm to - source 5 V',
  BusBias: 'bias at head 510 ohm to + 510 ohm to - source 5 V',
  BusShield: 'shield earthed at head through 470 kohm capacitor 100 nF',
  Terminate: '38 ft to case1 : CaseBoard terminate resistor 120 ohm capacitor 1 nF',
  AtMost: 'at most 150 ohm of cable',
  Reads: 'reads alarm above 1 kohm below 2 kohm',
};

/** Where a value stands in a text; undefined where the text has none. */
function spotOf(text: string, name: string, placeholder: string, from: number): Spot | undefined {
  const wanted = placeholder.toLowerCase();
  const inside = (node: unknown): Spot | undefined => {
    if (typeof node !== 'object' || node === null) return undefined;
    for (const [key, value] of Object.entries(node)) {
      const isWanted = key === wanted || key === `${wanted}s`;
      const found = isWanted ? (Array.isArray(value) ? value[0] : value) : inside(value);
      if (typeof found === 'object' && found !== null) return found as Spot;
    }
    return undefined;
  };
  const find = (node: unknown): Spot | undefined => {
    if (typeof node !== 'object' || node === null) return undefined;
    const { type, start } = node as { readonly type?: string; readonly start?: number };
    if (type === name && from <= (start ?? 0)) return inside(node);
    for (const value of Object.values(node)) {
      const found = find(value);
      if (found) return found;
    }
    return undefined;
  };
  return find(readSheet(text).sheet);
}

/** Puts another value there and gives what is told of it. */
function tellsOf(entry: Entry, placeholder: string): (written: string) => { rule: string; message: string }[] {
  const { text, start } = exampleFile(entry, whole[entry.name] ?? entry.topic.example);
  const spot = spotOf(text, entry.name, placeholder, start);
  if (!spot) throw new Error(`the statement to try ${entry.title} with has no ${placeholder}`);
  return (written) => {
    const changed = text.slice(0, spot.start) + written + text.slice(spot.end);
    const { findings } = exampleProject(changed).check();
    return findings.filter(
      ({ place, severity }) =>
        place.file === 'example.pair' &&
        severity === 'error' &&
        spot.start <= place.start &&
        place.end <= spot.start + written.length,
    );
  };
}

const values = entries.flatMap((entry) =>
  Object.entries(entry.topic.values ?? {}).map(
    ([placeholder, value]) => [`${entry.scope} ${entry.title} ${placeholder}`, entry, placeholder, value] as const,
  ),
);
const measured = values.filter(([, , , { measures }]) => measures);
const worded = values.filter(([, , , { words }]) => words);

const rulesOf = (findings: readonly { readonly rule: string }[]) => findings.map(({ rule }) => rule);
const isRefused = (findings: readonly { readonly rule: string }[]) => rulesOf(findings).includes('value-impossible');

/** A quantity in a unit, amid what is taken where the unit is. */
function sound(unit: string, { measures = [] }: Value): string {
  const dimension = units.get(unit)?.dimension;
  const { least, most } = measures.find((one) => one.dimension === dimension) ?? {};
  const low = siOf(least) ?? 0;
  const wanted = ((siOf(most) ?? low + 2) + low) / 2;
  const zero = toSi(0, unit) ?? 0;
  return `${Number(((wanted - zero) / ((toSi(1, unit) ?? 1) - zero)).toPrecision(6))} ${unit}`;
}
const numberOf = (text: string) => Number(text.split(' ')[0]);
const unitOf = (text: string) => text.split(' ')[1] ?? '';
const siOf = (text: string | undefined) => (text === undefined ? undefined : toSi(numberOf(text), unitOf(text)));

describe.each(measured)('%s', (_, entry, placeholder, value) => {
  const measures = value.measures ?? [];
  const tell = tellsOf(entry, placeholder);

  it('takes each unit that the reference names and no other', () => {
    const wanted = measures.flatMap(({ dimension }) => unitsOf(dimension));
    const others = new Map([...units].map(([unit, { dimension }]) => [dimension, unit]));
    const tried = [...new Set([...wanted, ...others.values()])];
    expect(tried.filter((unit) => !rulesOf(tell(sound(unit, value))).includes('unit-unsuited'))).toEqual(wanted);
  });

  it('takes what lies within the bounds and nothing beyond', () => {
    for (const { dimension, positive, least, most } of measures) {
      const [unit = ''] = unitsOf(dimension);
      expect(isRefused(tell(sound(unit, value)))).toBe(false);
      if (positive) expect(isRefused(tell(`0 ${unit}`)), 'nothing at all').toBe(true);
      if (least !== undefined) {
        expect(isRefused(tell(least)), least).toBe(false);
        expect(isRefused(tell(`${numberOf(least) - 0.01} ${unitOf(least)}`)), `less than ${least}`).toBe(true);
      }
      const beyond = most === undefined ? undefined : `${numberOf(most) * 1.01} ${unitOf(most)}`;
      if (most !== undefined && beyond !== undefined) {
        expect(isRefused(tell(most)), most).toBe(false);
        expect(isRefused(tell(beyond)), beyond).toBe(true);
      } else expect(isRefused(tell(`1000000000 ${unit}`)), 'a great many').toBe(false);
    }
  });
});

describe.each(worded)('%s', (_, entry, placeholder, { words = [] }) => {
  it('takes the words that the reference names', () => {
    const [finding] = tellsOf(entry, placeholder)('nonesuch');
    expect(finding?.rule).toBe('unknown-word');
    expect(/known are ([^;]*?)(?:; did you mean .*)?$/.exec(finding?.message ?? '')?.[1]?.split(', ')).toEqual([
      ...words,
    ]);
  });
});

it('takes each word for the coding of dials and switches that the reference names', () => {
  const entry = entries.find(({ name }) => name === 'PortAddress') as Entry;
  const named = [...(entry.topic.values?.['CODING']?.what ?? '').matchAll(/`([a-z-]+)`/g)].map(([, word = '']) => word);
  const told = (means: string, word: string) =>
    exampleProject(exampleFile(entry, `address ${means} 1..99 of 8 ${word}`).text)
      .check()
      .findings.filter(({ rule }) => rule === 'unknown-word')
      .map(({ message }) => message);
  const known = (means: string) => /known are ([^;]*)/.exec(told(means, 'nonesuch')[0] ?? '')?.[1]?.split(', ') ?? [];
  expect(new Set(named)).toEqual(new Set([...known('dial'), ...known('switches')]));
});

it('tries most of the quantities and words that there are', () => {
  expect(measured.length).toBeGreaterThan(30);
  expect(worded.length).toBeGreaterThan(10);
});
