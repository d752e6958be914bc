/** The rules about shape that have few cases of their own; the table test of all rules runs the examples of their pages. */
import { describe, expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { fixText } from '../../../../language/src/testing/fix-text.js';
import { endsRules } from '../ends/index.js';
import { exampleOf } from './example.js';
import { shapeRules } from './index.js';

const own = [...shapeRules, ...endsRules].map(({ id }) => id);
const idsOf = (text: string) => checkText(text, own).map(({ rule, at }) => (at === undefined ? rule : `${rule} ${at}`));
const head = 'from head : SiteHead terminate switch';

describe('landed-twice', () => {
  it('is a run that comes back to its own start, and removing it leaves a sound bus', () => {
    const text = exampleOf([
      head,
      '10 ft to a : CaseBoard address 1',
      '5 ft to a',
      '10 ft to b : CaseBoard address 2 terminate switch',
    ]);
    expect(idsOf(text)).toEqual(['landed-twice a']);
    expect(idsOf(fixText(text, checkText(text, ['landed-twice'])[0]!))).toEqual([]);
  });

  it('is a second cable between two landings, no closed loop', () => {
    const text = exampleOf([head, '10 ft to a : CaseBoard address 1 terminate switch', '12 ft to head']);
    expect(idsOf(text)).toEqual(['landed-twice head']);
  });
});

describe('a run that cannot simply be removed', () => {
  const mended = (statements: string[], rule: string) => {
    const text = exampleOf(statements);
    const [finding] = checkText(text, [rule]);
    expect(finding?.fixes()).toHaveLength(1);
    return { title: finding?.fixes()[0]?.title, text: fixText(text, finding!) };
  };

  it('is left out where the chain goes on from a landing that it passed before', () => {
    const { title, text } = mended(
      [
        head,
        '40 ft to a : CaseBoard address 1',
        '20 ft to b : CaseBoard address 2 // far off',
        '20 ft to a',
        '30 ft to c : CaseBoard address 3 terminate switch',
      ],
      'landed-twice',
    );
    expect(title).toMatch(
      /^Leave out the 20 ft run from b to a, and run one chain through head, a, b and c: about 20 ft/,
    );
    expect(text).toContain('20 ft to b : CaseBoard address 2 // far off\n    50 ft to c : CaseBoard address 3');
    expect(idsOf(text)).toEqual([]);
  });

  it('leaves what is said of its landing', () => {
    const statements = [
      head,
      '10 ft to a',
      '10 ft to a : CaseBoard address 1',
      '5 ft to b : CaseBoard address 2 terminate switch',
    ];
    const { title, text } = mended(statements, 'landed-twice');
    expect(title).toBe('Leave out the 10 ft run from a to a');
    expect(text).toContain('10 ft to a : CaseBoard address 1\n    5 ft to b');
    expect(idsOf(text)).toEqual([]);
    const ring = [
      'from head : SiteHead',
      '10 ft to a : CaseBoard address 1',
      '10 ft to b : CaseBoard address 2',
      '9 ft to head terminate switch',
    ];
    const opened = mended(ring, 'closed-loop');
    expect(opened.text).toContain('from head : SiteHead terminate switch\n');
    expect(idsOf(opened.text)).toEqual([]);
  });
});

describe('closed-loop', () => {
  it('is one finding for a ring, and opening it terminates the ends that this makes', () => {
    const text = exampleOf([
      'from head : SiteHead',
      '10 ft to a : CaseBoard address 1 terminate switch',
      '10 ft to b : CaseBoard address 2',
      '10 ft to head',
    ]);
    expect(idsOf(text)).toEqual(['closed-loop head']);
    const mended = fixText(text, checkText(text, ['closed-loop'])[0]!);
    expect(idsOf(mended)).toEqual([]);
    expect(mended).toContain('from head : SiteHead terminate switch\n');
    expect(mended).toContain('a : CaseBoard address 1\n');
  });
});

describe('island', () => {
  it('is one finding for each part, not for the names that do not exist', () => {
    const parts = [
      head,
      '10 ft to a : CaseBoard address 1',
      'from b : CaseBoard address 2',
      '9 ft to c : CaseBoard address 3',
      'from d : CaseBoard address 4',
    ];
    expect(idsOf(exampleOf(parts))).toEqual(['island b', 'island d']);
    const typo = exampleOf([
      head,
      '10 ft to a : CaseBoard address 1 terminate switch',
      'from aa',
      '9 ft to c : CaseBoard address 3',
    ]);
    expect(checkText(typo, ['island'])).toEqual([]);
    expect(checkText(typo, ['unknown-name'])).toHaveLength(1);
  });
});

describe('dangling-run', () => {
  it('is about taps too, and not about spare runs or half-written ones', () => {
    const bus = (statement: string) =>
      exampleOf([head, '10 ft to a : CaseBoard address 1 terminate switch', statement]);
    expect(idsOf(bus('tap 10 ft'))).toEqual(['dangling-run a']);
    expect(idsOf(bus('10 ft spare'))).toEqual([]);
    expect(idsOf(bus('10 ft to'))).toEqual([]);
  });
});

describe('taps-add-up', () => {
  it('leaves taps that are too long each to their own rule', () => {
    const text = exampleOf([
      head,
      '10 m to a : CaseBoard address 1 terminate switch',
      'tap 15 m to p : AirProbe address 3',
      'tap 15 m to q : AirProbe address 4',
      'tap 15 m to r : AirProbe address 5',
    ]);
    expect(idsOf(text).map((id) => id.split(' ')[0])).toEqual(['tap-too-long', 'tap-too-long', 'tap-too-long']);
  });
});

describe('no-head', () => {
  it('keeps silent where an unknown device or a repeater may stand for the head', () => {
    const bus = exampleOf([
      'from head : CaseBoard address 3 terminate switch',
      '10 ft to b : CaseBoard address 2 terminate switch',
    ]);
    expect(idsOf(bus)).toEqual(['no-head']);
    expect(checkText(bus.replace('head : CaseBoard', 'head : Stranger'), ['no-head'])).toEqual([]);
    expect(checkText(bus.replace('device CaseBoard {', '$&\n  role repeater'), ['no-head'])).toEqual([]);
  });
});
