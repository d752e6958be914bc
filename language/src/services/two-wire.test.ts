/** What the editor says of supplies and contact loops, on the sample that has both. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { Project } from '../workspace/project.js';
import { codeLenses } from './code-lens.js';
import { completionPlace } from './completion-place.js';
import { Desk } from './desk.js';
import { hover } from './hover.js';
import { inlayHints } from './inlay-hints.js';

const samples = new URL('../../../samples/', import.meta.url);
const file = 'power/store.pair';
const project = new Project({
  resolve: (_, path) => path.replace('../', ''),
  read: (path) => ({ text: readFileSync(new URL(path, samples), 'utf8') }),
});
project.add(file);
const desk = new Desk(project);
const text = project.textOf(file) ?? '';

function hoverAt(words: string, into = 0): string {
  const lines = text.slice(0, text.indexOf(words) + into).split('\n');
  const found = hover(desk, file, { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 });
  return (found?.contents as { readonly value: string } | undefined)?.value ?? 'nothing';
}

it('says of a landing of a supply what it gets', () => {
  const said = hoverAt('horn1 : HornLamp', 1);
  expect(said).toMatch(/voltage: 23\.\d V \(2\d(\.\d)? to 24\.7 V\)/);
  expect(said).toContain('draws: 180 mA dc above 20 V below 28 V');
  expect(said).not.toMatch(/delay|idle/);
});

it('says of a run of a supply what flows and what fuses it', () => {
  const said = hoverAt('60 ft fuse', 1);
  expect(said).toContain('fuse in plus where it leaves alarms.out: 2 A');
  expect(said).toMatch(/current: 65\d mA/);
});

it('says of a contact what its alarm looks like at the input', () => {
  expect(hoverAt('call1 "Call', 1)).toMatch(/alarm: 9\.4 kohm \(8\.93 to 9\.87 kohm\), read as alarm, alike/);
});

it('says of a loop what the input sees', () => {
  const said = hoverAt('roomAlarms', 1);
  expect(said).toMatch(/normal: 4\.7 kohm .*, read as normal/);
  expect(said).toContain('wire cut: open, read as fault');
  expect(said).toMatch(/contacts: 3, at most 3/);
});

it('says of a port what it expects, reads and supplies', () => {
  expect(hoverAt('alarms.loop1', 9)).toContain('reads alarm above 7.5 kohm below 21 kohm');
  expect(hoverAt('alarms.out', 9)).toContain('supplies 24 V dc within 3 %, 2 A at most, class 2');
});

it('says the most telling figure above a bus and beside a landing', () => {
  expect(codeLenses(desk, file).map(({ command }) => command?.title)).toEqual([
    'Draw this store',
    '124 ft · 4 landings · 3 contacts, normal 4.7 kohm',
    '55 ft · 3 landings · 2 contacts, normal 4.7 kohm',
    expect.stringMatching(/^134 ft · 5 landings · at least 22\.\d V$/),
    expect.stringMatching(/^85 ft · 2 landings · at least 23\.\d V$/),
    expect.stringMatching(/^83 ft · 4 landings · at least 21\.\d V$/),
  ]);
  const everywhere = { start: { line: 0, character: 0 }, end: { line: 1000, character: 0 } };
  const labels = inlayHints(desk, file, everywhere).map(({ label }) => label);
  expect(labels).toContain('80 ft, alarm 9.4 kohm');
  expect(labels.some((label) => /^134 ft, 23\.\d V$/.test(String(label)))).toBe(true);
  // A supply has no ends that anything would be landed at.
  expect(labels.filter((label) => label === 'END')).toHaveLength(4);
});

it.each([
  ['reads ', { what: 'word', words: ['normal', 'alarm', 'fault'] }],
  ['supplies 24 V ', { what: 'word', words: ['dc', 'ac'] }],
  ['supplies 24 ', { what: 'unit', units: ['V'] }],
  ['draws 0.4 ', { what: 'unit', units: ['A', 'mA', 'W', 'VA'] }],
  ['draws 0.4 A dc above 19 ', { what: 'unit', units: ['V'] }],
  ['reads alarm above 7.5 kohm below 21 ', { what: 'unit', units: ['kohm', 'ohm'] }],
  ['breaks + bridged 4.7 ', { what: 'unit', units: ['kohm', 'ohm'] }],
  ['across through 2.2 ', { what: 'unit', units: ['kohm', 'ohm'] }],
  ['to a across\n 12 ', { what: 'unit', units: ['ft', 'm', 'in'] }],
  ['shield through\n 12 ', { what: 'unit', units: ['ft', 'm', 'in'] }],
  ['40 ft fuse 2 ', { what: 'unit', units: ['A', 'mA'] }],
  ['supplies 24 V dc class ', { what: 'nothing' }],
])('offers what may follow %j', (before, due) => {
  expect(completionPlace(before, before.length).due).toEqual(due);
});
