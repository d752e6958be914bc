/** The rules about contact loops, with the cases between them; the table test of all rules runs the examples of their pages. */
import { describe, expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { fixText } from '../../../../language/src/testing/fix-text.js';
import { loopExample, resistorOnly, soundLoop } from './example.js';
import { loopRules } from './index.js';

const own = loopRules.map(({ id }) => id);
const findingsIn = (statements: readonly string[], input?: readonly string[]) =>
  checkText(loopExample(statements, { ...(input && { input }) }), own);
const idsOf = (statements: readonly string[], input?: readonly string[]) =>
  findingsIn(statements, input).map(({ rule, at, severity }) => `${rule} ${at} ${severity}`);
const plain = ['reads normal below 300 ohm', 'reads alarm above 2 kohm'];

it('a sound loop has no finding of any rule but that an entry is not used', () => {
  const rules = checkText(loopExample(soundLoop)).map(({ rule }) => rule);
  expect(new Set(rules)).toEqual(new Set(['unused-entry']));
});

describe('one cause is one finding', () => {
  it.each([
    ['no resistor', ['9 ft to a : CallButton breaks + bridged 4.7 kohm'], ['end-resistor-missing a error']],
    [
      'a contact unplaced, and no resistor: two causes',
      ['9 ft to a : CallButton'],
      ['contact-unplaced a error', 'end-resistor-missing a error'],
    ],
    [
      'a wrong value that is read wrongly as well',
      ['9 ft to a : CallButton breaks + bridged 4.7 kohm terminate resistor 1 kohm'],
      ['end-resistor-value a error'],
    ],
  ])('%s', (_, statements, expected) => {
    expect(idsOf(statements)).toEqual(expected);
  });

  it('names contacts that are misread alike in one finding, others in another', () => {
    const findings = findingsIn([
      '9 ft to a : CallButton breaks +',
      '9 ft to b : CallButton breaks +',
      '9 ft to c : CallButton breaks + bridged 1 kohm terminate resistor 4.7 kohm',
    ]).filter(({ rule }) => rule === 'loop-misread');
    expect(findings.map(({ message }) => message.slice(0, 40))).toEqual([
      'while a and b are in alarm, one at a tim',
      'while c is in alarm, panel sees 5.7 kohm',
    ]);
  });
});

describe('an input without a resistor', () => {
  it('is quiet about a loop of closed contacts, and notes that a short is not seen', () => {
    const statements = ['9 ft to a : CallButton breaks +', '9 ft to b : CallButton across'];
    expect(idsOf(statements, plain)).toEqual(['loop-unsupervised a info']);
  });

  it('is told of a closed contact that shorts the others', () => {
    const statements = ['9 ft to a : CallButton across', '9 ft to b : CallButton across'];
    expect(idsOf(statements, plain)).toEqual(['contact-unsuited a error', 'contact-unsuited b error']);
  });
});

it('a state that only its tolerance carries over a border is a warning', () => {
  // 4.7 kohm and 5 % are 4.465 to 4.935 kohm.
  const input = [
    'expects resistor 4.7 kohm',
    'reads normal above 3.6 kohm below 4.8 kohm',
    'reads alarm above 7.5 kohm',
  ];
  expect(idsOf(soundLoop, input)).toEqual(['loop-misread panel warning']);
});

it('bridges in line may add up beyond what is an alarm', () => {
  const input = [
    'expects resistor 4.7 kohm',
    'reads normal above 3.6 kohm below 6.2 kohm',
    'reads alarm above 7.5 kohm below 11 kohm',
  ];
  const [finding] = findingsIn(soundLoop, input);
  expect(finding?.message).toMatch(/^while all contacts are in alarm at once, panel sees 14\.1 kohm/);
  expect(finding?.fixes()).toEqual([]);
});

describe('fixes', () => {
  it('bridge bare contacts with the value of the resistor', () => {
    const text = loopExample([
      '9 ft to a : CallButton breaks -',
      '9 ft to b : CallButton breaks - terminate resistor 4.7 kohm',
    ]);
    const [finding] = checkText(text, own);
    expect(finding?.fixes()[0]?.title).toBe('Bridge 2 contacts with 4.7 kohm each');
    const mended = fixText(text, finding!);
    expect(mended).toContain('a : CallButton breaks - bridged 4.7 kohm\n');
    expect(checkText(mended, own)).toEqual([]);
  });

  it('move the resistor from the panel to the end', () => {
    const text = loopExample(['9 ft to a : CallButton breaks + bridged 4.7 kohm']).replace(
      'from panel : Panel',
      'from panel : Panel terminate resistor 4.7 kohm',
    );
    const [finding] = checkText(text, own);
    expect(finding?.rule).toBe('end-resistor-misplaced');
    expect(checkText(fixText(text, finding!), own)).toEqual([]);
  });

  it('say how an unplaced contact lies: the usual way for it first', () => {
    const titles = (device: string) =>
      findingsIn([`9 ft to a : ${device} terminate resistor 4.7 kohm`], resistorOnly)[0]
        ?.fixes()
        .map(({ title }) => title);
    expect(titles('CallButton')).toEqual(['Let a break the plus conductor']);
    expect(titles('Float')).toEqual(['Wire a across the pair', 'Let a break the plus conductor']);
  });
});

it('a branch without a resistor is not watched', () => {
  const findings = findingsIn([
    '9 ft to splice junction',
    '9 ft to a : CallButton breaks + bridged 4.7 kohm terminate resistor 4.7 kohm',
    'from junction',
    '9 ft to splice lone',
  ]);
  expect(findings.map(({ rule, at }) => `${rule} ${at}`)).toEqual(['loop-unsupervised lone']);
});

it('keeps silent where the text is damaged or a name unknown', () => {
  expect(idsOf(['9 ft to a : Stranger breaks +'])).toEqual([]);
  expect(idsOf(['9 ft to a : CallButton breaks', '9 ft to'])).toEqual([]);
});

it.each([
  ['breaks + across', 'statement-repeated'],
  ['breaks + bridged 4.7', 'unit-missing'],
  ['across through 3 V', 'unit-unsuited'],
])('%s is a mistake of the text: %s', (words, rule) => {
  const text = loopExample([`9 ft to a : CallButton ${words} terminate resistor 4.7 kohm`]);
  expect(checkText(text, [rule])).toHaveLength(1);
});

it.each([
  ['reads norml below 3 kohm', 'unknown-word'],
  ['reads normal above 6 kohm below 3 kohm', 'value-impossible'],
  ['reads normal above 3 kohm below 6 kohm reads alarm above 5 kohm', 'value-impossible'],
  ['at most 2.5 contacts', 'value-impossible'],
  ['at most 3 contacts at most 4 contacts', 'statement-repeated'],
  ['expects resistor 4700', 'unit-missing'],
])('%s is a mistake of the catalogue: %s', (line, rule) => {
  expect(checkText(loopExample(soundLoop, { input: [line] }), [rule])).toHaveLength(1);
});
