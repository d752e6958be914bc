import { expect, it } from 'vitest';
import { hostOf } from '../testing/check-text.js';
import { fileGroups } from './file-groups.js';

const files = {
  'a.pair': 'store alder {\n}\n',
  'b.pair': 'import "a.pair"\nstore alder continued {\n}\n',
  'c.pair': '// continued elsewhere\nstore cedar {\n}\n',
  'd.pair': 'import "far.pair"\nstore far continued {\n}\n',
  'e.pair': 'import "c.pair"\nstore elm {\n}\n',
  'f.pair': 'import "far.pair"\nimport "a.pair"\nstore far continued {\n}\nstore alder continued {\n}\n',
  'far.pair': 'store far {\n}\n',
  'g.pair': 'store nobody continued {\n}\n',
};
const groups = (...asked: string[]) => fileGroups(asked, hostOf(files));

it('keeps a store and what continues it together, and all else apart', () => {
  expect(groups('a.pair', 'b.pair', 'c.pair', 'e.pair', 'g.pair')).toEqual([
    ['a.pair', 'b.pair'],
    ['c.pair'],
    ['e.pair'],
    ['g.pair'],
  ]);
});

it('keeps together what continues a store that was not asked for', () => {
  expect(groups('c.pair', 'd.pair', 'f.pair')).toEqual([['c.pair'], ['d.pair', 'f.pair']]);
});

it('joins groups that a file has stores of both of', () => {
  expect(groups('a.pair', 'c.pair', 'd.pair', 'f.pair')).toEqual([['a.pair', 'd.pair', 'f.pair'], ['c.pair']]);
});
