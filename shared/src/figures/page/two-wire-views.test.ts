import { expect, it } from 'vitest';
import { studyText } from '../../../../language/src/testing/study-text.js';
import { loopExample, soundLoop } from '../../rules/loop/example.js';
import { soundSupply, supplyExample } from '../../rules/supply/example.js';
import { busFigures } from '../bus-figures.js';
import { busPage } from './bus-page.js';

const linesOf = (text: string) => busPage(studyText(text)).lines;

it('the page of a supply has its source, what is given and lost, and a voltage for each landing', () => {
  const lines = linesOf(supplyExample(soundSupply));
  expect(lines).toContain('source at psu      24 V dc within 2 %, 4 A at most, class 2');
  expect(lines.some((line) => /^given +800 mA \(0 A to 800 mA\), 19\.2 W/.test(line))).toBe(true);
  expect(lines.some((line) => /^board2 .*400 mA dc above 19 V below 30 V +23\.\d V \(/.test(line))).toBe(true);
  expect(lines.some((line) => line.startsWith('drawn from psu at the most'))).toBe(true);
});

it('says once what is not known', () => {
  const lines = linesOf(supplyExample(soundSupply).replace(/ +draws .*\n/, ''));
  expect(lines.filter((line) => /^given +unknown: what board1 draws$/.test(line))).toHaveLength(1);
  expect(lines.some((line) => line.startsWith('lost'))).toBe(false);
});

it('says of a supply that collapses what there is none of', () => {
  const lines = linesOf(supplyExample(soundSupply).replace(/draws .* dc/g, 'draws 500 W dc'));
  const missing = 'unknown: a voltage at which the loads get what they ask for';
  expect(lines.filter((line) => line.startsWith('given'))).toEqual([
    expect.stringMatching(new RegExp(`^given +${missing}$`)),
  ]);
  expect(lines).toContain(`voltage, current ${missing}`);
});

it('the page of a loop has its states, and the alarm of each contact', () => {
  const lines = linesOf(loopExample(soundLoop));
  expect(lines.some((line) => /^normal +4\.7 kohm \(4\.47 to 4\.94 kohm\), read as normal$/.test(line))).toBe(true);
  expect(lines.some((line) => /^wire cut +open, read as fault$/.test(line))).toBe(true);
  expect(lines.some((line) => /^call1 .*normally closed, breaks \+ +9\.4 kohm .*, alike/.test(line))).toBe(true);
});

it('the plain data of both are whole and know no other kind', () => {
  const supply = busFigures(studyText(supplyExample(soundSupply)));
  expect(supply.supply).toMatchObject({
    sources: [{ landing: 'psu', source_v: 24, form: 'dc', limit_a: 4, limit_w: null, given_a: { low: 0 } }],
    runs: [
      { from: 'psu', to: 'board1', current_a: { nominal: expect.closeTo(0.8, 6) } },
      { from: 'board1', to: 'board2', current_a: { nominal: expect.closeTo(0.4, 6) } },
    ],
  });
  expect(supply.landings[2]?.supply_v?.high).toBeCloseTo(24.48, 6);
  const loop = busFigures(studyText(loopExample(soundLoop)));
  expect(loop.supply).toBeUndefined();
  expect(loop.contact_loop?.states.map(({ state, reads }) => `${state} ${reads}`)).toEqual([
    'normal normal',
    'alarm alarm',
    'alarm alarm',
    'all alarms alarm',
    'cut fault',
    'short fault',
  ]);
  expect(loop.contact_loop?.states[4]?.ohm).toEqual({ nominal: null, low: null, high: null });
  expect(JSON.parse(JSON.stringify(loop))).toEqual(loop);
});
