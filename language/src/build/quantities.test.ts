import { expect, it } from 'vitest';
import { checkText } from '../testing/check-text.js';

const fixesOf = (heading: string, run = '30 ft') =>
  checkText(
    `device Board {\n  port field : rs485\n}\nstore lark {\n  bus cases : ${heading} {\n    from a : Board\n    ${run} to b : Board\n  }\n}\n`,
    ['unit-unsuited'],
  ).map((finding) => finding.fixes().map(({ title }) => title));

it.each([
  ['modbus-rtu 19.2 k 8E1', ['Change to kbit/s']],
  ['modbus-rtu 19.2 kbps 8E1', ['Change to kbit/s']],
  ['can 1 M', ['Change to Mbit/s']],
  ['modbus-rtu 19200 baud 8E1', ['Change to bit/s']],
])('offers for the rate of %s what was meant', (heading, titles) => {
  expect(fixesOf(heading)).toEqual([titles]);
});

it.each([
  ['30 feet', 'Change to ft'],
  ['30 metres', 'Change to m'],
  ['30 inches', 'Change to in'],
])('knows %s by its first letter', (run, title) => {
  expect(fixesOf('modbus-rtu 19200 8E1', run)[0]?.[0]).toBe(title);
});
