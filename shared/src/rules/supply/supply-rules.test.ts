/** The rules about supplies, with the cases between them; the table test of all rules runs the examples of their pages. */
import { describe, expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { fixText } from '../../../../language/src/testing/fix-text.js';
import { studyText } from '../../../../language/src/testing/study-text.js';
import { summary } from '../../figures/summary.js';
import { soundSupply, supplyExample } from './example.js';
import { supplyRules } from './index.js';

const own = supplyRules.map(({ id }) => id);
const idsOf = (text: string) => checkText(text, own).map(({ rule, at, severity }) => `${rule} ${at} ${severity}`);

it('a sound supply has no finding of any rule', () => {
  expect(checkText(supplyExample(soundSupply))).toEqual([]);
});

describe('supply-drop', () => {
  // 20 AWG: 33.31 ohm/km solid (NBS Handbook 100), 2 % more stranded: 68 ohm/km out and back.
  const thin = { conductor: '20 AWG stranded' };

  it('is a warning where only the worst is too low, and one finding for all that get too little', () => {
    const findings = checkText(supplyExample(['250 ft to board1 : Board', '10 ft to board2 : Board'], thin), own);
    expect(findings.map(({ rule, at, severity }) => `${rule} ${at} ${severity}`)).toEqual([
      'supply-drop board2 warning',
    ]);
    expect(findings[0]?.related.map(({ message }) => message.replace(/[\d.]+ V/, '_ V'))).toEqual([
      'it needs that by its catalogue entry',
      'board1 gets too little too: _ V at the worst',
    ]);
  });

  it('offers a cable of the store on which every device gets enough', () => {
    const more = 'cable ThickPair {\n  conductor 12 AWG stranded\n}\nstore northgate continued {\n}\n';
    const text = supplyExample(['300 ft to board1 : Board', '200 ft to board2 : Board'], thin)
      .replace('cable PowerPair', `${more.split('store')[0]}cable PowerPair`)
      .replace(
        'store northgate {',
        'store northgate {\n  bus other : supply on ThickPair {\n    from spare : PowerBox\n    9 ft to far : Board\n    colours + red - black\n  }',
      );
    const [finding] = checkText(text, own);
    expect(finding?.fixes().map(({ title }) => title)).toEqual([
      'Pull bus power on ThickPair, on which every device gets enough',
    ]);
    expect(idsOf(fixText(text, finding!))).toEqual([]);
  });
});

describe('fuses and wires', () => {
  const strong = { source: '24 V dc within 2 % limit 20 A', conductor: '18 AWG stranded' };

  it('a fuse protects what lies behind it, up to the next one', () => {
    expect(
      idsOf(supplyExample(['40 ft fuse 5 A to board1 : Board', '9 ft fuse 2 A to board2 : Board'], strong)),
    ).toEqual([]);
    expect(idsOf(supplyExample(['40 ft to board1 : Board', '9 ft fuse 2 A to board2 : Board'], strong))).toEqual([
      'wire-unfused board1 warning',
    ]);
    expect(idsOf(supplyExample(['40 ft fuse 10 A to board1 : Board'], strong))).toEqual([
      'fuse-over-wire board1 warning',
    ]);
  });

  it('what the maker of the cable states wins over what is remembered', () => {
    const stated = { ...strong, conductor: '18 AWG stranded\n  carries 3 A' };
    expect(idsOf(supplyExample(['40 ft fuse 4 A to board1 : Board'], stated))).toEqual([
      'fuse-over-wire board1 warning',
    ]);
  });

  it('says nothing of wire thinner than any size that is remembered, nor of a ring', () => {
    expect(
      idsOf(supplyExample(['40 ft fuse 15 A to board1 : Board'], { ...strong, conductor: '22 AWG stranded' })),
    ).toEqual([]);
    expect(idsOf(supplyExample([...soundSupply, '40 ft fuse 15 A to psu'], strong))).toEqual([]);
  });

  it('a fuse is too small by stated loads, or only at the worst', () => {
    const powered = (fuse: string) =>
      idsOf(supplyExample([`40 ft fuse ${fuse} to board1 : Board`], { board: '9.6 W dc above 19 V below 30 V' }));
    // 9.6 W at 24 V are 0.4 A; at the worst a little more.
    expect(powered('0.39 A')).toEqual(['fuse-under-load board1 error']);
    expect(powered('0.404 A')).toEqual(['fuse-under-load board1 warning']);
    expect(powered('0.5 A')).toEqual([]);
  });
});

describe('alternating supplies', () => {
  const ac = {
    source: '24 V ac within 10 % limit 40 VA class 2',
    board: '6 VA above 19 V below 30 V',
  };

  it('are judged in VA', () => {
    const many = Array.from({ length: 7 }, (_, index) => `5 ft to board${index} : Board`);
    const [finding] = checkText(supplyExample(many, ac), own);
    expect(finding?.message).toMatch(/take 42(\.\d)? VA of psu, which gives 40 VA at most/);
  });

  it('want one wire as common where several devices share the source', () => {
    expect(idsOf(supplyExample(['5 ft to a : Board crossed', '5 ft to b : Board'], ac))).toEqual([
      'supply-reversed a warning',
    ]);
    const free = supplyExample(['5 ft to a : Board crossed'], ac).replace('polarity required', 'polarity free');
    expect(idsOf(free)).toEqual([]);
  });
});

it('a source of more than 30 V is not judged by the table for up to 30 V', () => {
  const source = '48 V dc within 2 % limit 4 A class 2';
  expect(idsOf(supplyExample(soundSupply, { source, board: '6 W dc above 40 V below 56 V' }))).toEqual([]);
});

it('drop-over-advice speaks only of devices that state no least voltage', () => {
  const far = ['300 ft to board1 : Board'];
  expect(idsOf(supplyExample(far, { conductor: '18 AWG stranded', board: '0.4 A dc' }))).toEqual([
    'drop-over-advice board1 info',
  ]);
  expect(idsOf(supplyExample(far, { conductor: '18 AWG stranded' }))).toEqual([]);
  // A device behind it that states what it needs, and gets that, hides nothing.
  const mixed = supplyExample([...far, '100 ft to valve1 : Valve'], {
    conductor: '18 AWG stranded',
    board: '0.4 A dc',
  });
  const valve = 'device Valve { port power : supply { terminals + "24" - "0" draws 0.01 A dc above 10 V below 30 V } }';
  expect(idsOf(`${valve}\n${mixed}`)).toEqual(['drop-over-advice board1 info']);
});

it('figures hold no drop against advice where the device states what it needs', () => {
  const rows = (board?: string) =>
    summary(studyText(supplyExample(['300 ft to board1 : Board'], board === undefined ? {} : { board }))).map(
      ({ what }) => what,
    );
  expect(rows('0.4 A dc')).toContain('drop at board1');
  expect(rows()).not.toContain('drop at board1');
  expect(rows()).toContain('least voltage at board1');
});

it('judges nothing where the text is damaged, a name unknown or a draw unsaid', () => {
  expect(idsOf(supplyExample(['40 ft to a : Stranger']))).toEqual([]);
  expect(idsOf(supplyExample(['40 ft to a : Board', '40 ft to']))).toEqual([]);
  expect(idsOf(supplyExample(['900 ft to a : Board']).replace(/ +draws .*\n/, ''))).toEqual(['draw-unstated a info']);
});

it.each([
  ['24 V cd', 'unknown-word'],
  ['24 V class 4', 'value-impossible'],
  ['240 V', 'value-impossible'],
  ['24', 'unit-missing'],
  ['24 V limit 4 V', 'unit-unsuited'],
])('supplies %s is a mistake of the catalogue: %s', (source, rule) => {
  expect(checkText(supplyExample(soundSupply, { source }), [rule])).toHaveLength(1);
});
