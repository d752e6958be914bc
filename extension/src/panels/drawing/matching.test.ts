import { expect, it } from 'vitest';
import { matching } from './matching.js';

const parts = [
  { kind: 'bus', name: 'bus cases, Cases, 3 landings, ends at head and case12' },
  { kind: 'area', name: 'area Dairy wall, 2 landings' },
  { kind: 'run', name: 'run from head to case1, 12 ft' },
  { kind: 'landing', name: 'case1, CaseBoard, address 12' },
  { kind: 'joint', name: 'joint: all 2 places where case12 is drawn are one landing' },
  { kind: 'again', name: 'case12 again' },
  { kind: 'landing', name: 'case12, CaseBoard, address 20' },
] as const;
const found = (text: string) => matching(parts, text).map(({ name }) => name.split(',')[0]);

it('finds what is called so, before what merely mentions it', () => {
  expect(found('case12')).toEqual(['case12']);
  expect(found(' CASE1 ')).toEqual(['case1', 'case12']);
  expect(found('cases')).toEqual(['bus cases']);
  expect(found('dairy')).toEqual(['area Dairy wall']);
});

it('finds what is said of a part where nothing is called so', () => {
  expect(found('address 12')).toEqual(['case1']);
  expect(found('12 ft')).toEqual(['run from head to case1']);
  expect(found('nothing of the kind')).toEqual([]);
  expect(found('  ')).toEqual([]);
});
