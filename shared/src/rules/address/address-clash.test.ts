import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { soundFile } from '../pair/example.js';

const found = (text: string) => checkText(text, ['address-clash']);

const clash = soundFile.replace('address 12', 'address 11');

it('points at the second and names the first', () => {
  const [finding, ...others] = found(clash);
  expect(others).toEqual([]);
  expect(finding?.at).toBe('caseA2');
  expect(finding?.bus).toBe('chillers');
  expect(finding?.related.map(({ place }) => clash.slice(place.start, place.end))).toEqual(['11']);
});

it('reports each further device of three', () => {
  expect(found(clash.replace('22 ft to', '9 ft to caseA9 : CaseBoard address 11\n    22 ft to'))).toHaveLength(2);
});

it('lets two buses have the same addresses', () => {
  const second = soundFile.slice(soundFile.indexOf('  bus chillers'), soundFile.lastIndexOf('}'));
  const two =
    soundFile.replace(/\}\n$/, '') + second.replace('chillers', 'freezers').replace(/head|case/g, (name) => `b${name}`);
  expect(found(`${two}}\n`)).toEqual([]);
});

it('finds two units of one host network with one address', () => {
  const heads = (second: number) =>
    `device SiteHead { role head }\nstore s {\n  node head1 : SiteHead\n  node head2 : SiteHead\n  network plant { head1 address 3, head2 address ${second} }\n}\n`;
  const [finding] = found(heads(3));
  expect(finding?.message).toContain('head2 and head1 both have address 3 on host network plant');
  expect(finding?.fixes().map(({ title }) => title)).toEqual(['Give head2 address 4, the next free one']);
  expect(found(heads(4))).toEqual([]);
});
