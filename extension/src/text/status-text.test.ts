import { expect, test } from 'vitest';
import type { CheckStatus } from '../../../server/src/protocol.js';
import { describeCheck } from './check-text.js';
import { describeStatus } from './status-text.js';

const clock = (time: Date) => time.toISOString().slice(11, 19);

const checked: CheckStatus = {
  checking: false,
  files: 1204,
  stores: 1,
  findings: { error: 3, warning: 1, info: 0 },
  milliseconds: 45.4,
  at: '2026-03-14T09:26:53.000Z',
};

test('tells findings, size, time of day and duration', () => {
  expect(describeStatus('running', checked, clock)).toEqual({
    text: '3 errors, 1 warning',
    detail: '1,204 files at 09:26:53 in 45 ms',
    severity: 'error',
    busy: false,
  });
});

test('takes its severity from the worst finding', () => {
  const severityOf = (findings: CheckStatus['findings']) =>
    describeStatus('running', { ...checked, findings }, clock).severity;
  expect(severityOf({ error: 0, warning: 2, info: 9 })).toBe('warning');
  expect(severityOf({ error: 0, warning: 0, info: 9 })).toBe('info');
  expect(severityOf({ error: 0, warning: 0, info: 0 })).toBe('info');
});

test('says so when there is nothing to find', () => {
  const { text } = describeStatus('running', { ...checked, findings: { error: 0, warning: 0, info: 0 } }, clock);
  expect(text).toBe('No findings');
});

test('keeps the last findings on show while a check runs', () => {
  const { text, busy } = describeStatus('running', { ...checked, checking: true }, clock);
  expect({ text, busy }).toEqual({ text: '3 errors, 1 warning', busy: true });
});

test('shows durations from under a millisecond to seconds', () => {
  const detailOf = (milliseconds: number) => describeStatus('running', { ...checked, milliseconds }, clock).detail;
  expect(detailOf(0.3)).toMatch(/in less than 1 ms$/);
  expect(detailOf(4321)).toMatch(/in 4\.3 s$/);
});

test('tells a server that starts or reads from one that has stopped', () => {
  expect(describeStatus('starting', undefined, clock)).toMatchObject({ text: 'Starting', busy: true });
  expect(describeStatus('running', undefined, clock)).toMatchObject({ busy: true, severity: 'info' });
  expect(describeStatus('running', { ...checked, at: '' }, clock)).toMatchObject({ busy: true, severity: 'info' });
  expect(describeStatus('stopped', checked, clock)).toMatchObject({ text: 'Not running', severity: 'error' });
});

test('sums up a check of the workspace in one sentence', () => {
  const findings = { error: 1, warning: 0, info: 2 };
  expect(describeCheck({ files: 12, stores: 3, buses: 1, findings })).toBe(
    '12 files, 3 stores, 1 bus checked: 1 error, 2 notes.',
  );
});
