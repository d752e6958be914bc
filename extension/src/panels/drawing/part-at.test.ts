import { expect, it } from 'vitest';
import type { DrawingPart, Range } from '../../../../server/src/protocol.js';
import { partAt } from './part-at.js';

const range = (line: number, start: number, end: number): Range => ({
  start: { line, character: start },
  end: { line, character: end },
});
const part = (key: string, uri: string, ...ranges: Range[]): DrawingPart => ({
  key,
  kind: 'run',
  group: '',
  name: key,
  markup: '',
  at: { uri, range: ranges[0] ?? range(0, 0, 0) },
  covers: ranges.map((one) => ({ uri, range: one })),
  findings: [],
});

const parts = [
  part('run', 'file:///a', range(3, 4, 40)),
  part('landing', 'file:///a', range(3, 13, 40), range(9, 4, 9)),
  part('elsewhere', 'file:///b', range(3, 13, 14)),
];
const keyAt = (line: number, character: number) =>
  partAt(parts, (uri) => uri === 'file:///a', { line, character })?.key;

it('finds the smallest part around a place in the right file', () => {
  expect(keyAt(3, 5)).toBe('run');
  expect(keyAt(3, 13)).toBe('landing');
  expect(keyAt(3, 40)).toBe('landing');
  expect(keyAt(9, 4)).toBe('landing');
  expect(keyAt(3, 41)).toBeUndefined();
  expect(keyAt(4, 5)).toBeUndefined();
});
