import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { cableUnsuited } from './cable-unsuited.js';
import { soundFile } from './example.js';

const found = (text: string) => checkText(text, ['cable-unsuited']);

const messages = (text: string) => found(text).map(({ message }) => message);
const mstp = soundFile.replace('modbus-rtu 9600 8E1', 'bacnet-mstp 9600');

it('names all faults of a cable in one finding', () => {
  const [message, ...others] = messages(cableUnsuited.explanation.bad);
  expect(others).toEqual([]);
  expect(message).toMatch(/no shield.*not twisted/);
});

it('asks for a shield on Modbus, and not on RS-485 in general', () => {
  // Modbus serial line guide V1.02, 3.6: the cable must be shielded. TIA-485-A specifies no cable.
  const bare = soundFile.replace('shield foil drain', 'shield none');
  expect(messages(bare)[0]).toContain('no shield');
  expect(messages(bare.replace('modbus-rtu 9600 8E1', 'rs485 9600'))).toEqual([]);
});

it('keeps MS/TP to 100 to 130 ohm and below 100 pF/m', () => {
  // ASHRAE 135-2004 clause 9, in a public quotation; both limits include what lies on the allowed side only.
  expect(messages(mstp)).toEqual([]);
  expect(messages(mstp.replace('impedance 120 ohm', 'impedance 130 ohm'))).toEqual([]);
  expect(messages(mstp.replace('impedance 120 ohm', 'impedance 131 ohm'))).toHaveLength(1);
  expect(messages(mstp.replace('12.5 pF/ft', '99.9 pF/m'))).toEqual([]);
  expect(messages(mstp.replace('12.5 pF/ft', '100 pF/m'))).toHaveLength(1);
});

it('keeps RS-485 to 120 ohm, give or take 30', () => {
  expect(messages(soundFile.replace('impedance 120 ohm', 'impedance 90 ohm'))).toEqual([]);
  expect(messages(soundFile.replace('impedance 120 ohm', 'impedance 75 ohm'))[0]).toContain('not 90 to 150 ohm');
});

it('takes AWG 26 as the thinnest', () => {
  // Modbus serial line guide V1.02, 3.6: AWG 26 or thicker.
  expect(messages(soundFile.replace('22 AWG', '26 AWG'))).toEqual([]);
  expect(messages(soundFile.replace('22 AWG', '28 AWG'))[0]).toContain('thinner than 26 AWG');
});

it('assumes nothing that the cable does not say', () => {
  expect(messages(soundFile.replace(/(conductor|twisted|impedance|capacitance|velocity) .*\n/g, ''))).toEqual([]);
});

it('tells a bare stretch of bell wire in a shielded bus once, by what it is', () => {
  const stretch = `cable Bell18 {\n  conductor 18 AWG solid\n  untwisted\n  shield none\n}\n${soundFile.replace('22 ft to', '22 ft on Bell18 to')}`;
  const all = checkText(stretch, ['cable-unsuited', 'mixed-cable', 'shield-gap']);
  expect(all.map(({ rule }) => rule)).toEqual(['cable-unsuited']);
  expect(all[0]?.fixes().map(({ title }) => title)).toEqual(['Pull this run on ShieldedPair22']);
});
