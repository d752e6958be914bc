import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { soundFile } from './example.js';

const found = (text: string) => checkText(text, ['shield-unearthed']);

const unearthed = soundFile.replace('    shield earthed at head\n', '');

it('wants one earth for a shielded bus', () => {
  expect(found(unearthed)).toHaveLength(1);
  expect(found(unearthed.replace('shield foil drain', 'shield none'))).toEqual([]);
});

it('wants a capacitor and a resistor on free topology', () => {
  // Free topology transceiver data book: 0.1 uF with 470 kohm across, at least once per segment.
  const free = unearthed.replaceAll(': rs485', ': free-topology').replace('modbus-rtu 9600 8E1', 'free-topology');
  expect(found(free)[0]?.message).toContain('0.1 uF with 470 kohm');
});

it('judges no absence in damaged text, nor an earth at a name that is wrong', () => {
  expect(found(unearthed.replace('22 ft to', '22 ft onto'))).toEqual([]);
  expect(found(soundFile.replace('earthed at head', 'earthed at haed'))).toEqual([]);
});
