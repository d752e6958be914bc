/** The fixes of the rules about bias and driver load, in cases beyond the examples of their pages. */
import { describe, expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { fixText } from '../../../../language/src/testing/fix-text.js';
import { loadExample } from './example.js';

const titles = (text: string, rule: string) =>
  checkText(text, [rule])[0]
    ?.fixes()
    .map(({ title }) => title);

describe('a bias that is too weak', () => {
  it('gets the usual resistors, inside the 450 to 650 ohm of Modbus (V1.02, 3.4.6), and keeps its supply', () => {
    const text = loadExample({ more: ['bias at head 1800 ohm to + 1200 ohm to - source 12 V'] }).replace(
      '12 V',
      '5.5 V',
    );
    const [finding] = checkText(text, ['bias-weak']);
    expect(fixText(text, finding!)).toContain('bias at head 510 ohm source 5.5 V\n');
  });

  it('gets none where no resistor in the range of Modbus reaches the level', () => {
    // A supply of 3 V over 450 ohm twice and 60 ohm leaves 188 mV: less than the 200 mV of TIA-485-A.
    expect(titles(loadExample({ more: ['bias at head 700 ohm source 3 V'] }), 'bias-weak')).toEqual([]);
  });

  it('gets smaller ones on other kinds', () => {
    const text = loadExample({ more: ['bias at head 700 ohm source 3 V'] }).replace('modbus-rtu 19200 8E1', 'rs485');
    // 3 V over 330 ohm twice and 60 ohm: 250 mV, and more than 200 mV still over the tolerances of parts and supply.
    expect(titles(text, 'bias-weak')).toEqual(['Bias the pair with 330 ohm instead']);
  });
});

describe('a driver with too much to drive', () => {
  const two = { more: ['bias at head 150 ohm', 'bias at n2 510 ohm'] };
  it('may lose one of two biases', () => {
    const text = loadExample({ more: ['bias at head 510 ohm', 'bias at n2 470 ohm'] })
      .replace('modbus-rtu 19200 8E1', 'rs485')
      .replaceAll('120 ohm', '115 ohm');
    expect(titles(text, 'driver-overloaded')).toContain('Remove the bias at n2');
    expect(titles(loadExample(two).replace('modbus-rtu 19200 8E1', 'rs485'), 'driver-overloaded')).toEqual([
      'Remove the bias at head',
    ]);
  });

  it('may get larger terminators, if they fit the cable', () => {
    const text = loadExample().replaceAll('terminate switch', 'terminate resistor 100 ohm');
    const [finding] = checkText(text, ['driver-overloaded']);
    expect(finding?.fixes().map(({ title }) => title)).toEqual(['Terminate head and n2 with 120 ohm instead']);
    expect(checkText(fixText(text, finding!))).toEqual(checkText(loadExample()));
  });
});

describe('terminators that have findings of their own', () => {
  // 5 V over 510 ohm twice and two terminators leaves 278 mV, and 189 mV with a third: less than the 200 mV of
  // TIA-485-A. Three are 39 ohm together, one of 30 ohm with the other 24 ohm: less than its 54 ohm.
  const biased = loadExample({ more: ['bias at head 510 ohm'] });
  const third = biased.replace('address 1\n', 'address 1 terminate switch\n');
  const small = biased.replace('address 2 terminate switch', 'address 2 terminate resistor 30 ohm');
  const rules = (text: string) => checkText(text).map(({ rule }) => rule);

  it('are the one cause of a low level and of a heavy load', () => {
    expect(rules(third)).toEqual(['terminator-midline']);
    expect(rules(small)).toEqual(['terminator-value']);
  });

  it('hide no bias that is wrong without them', () => {
    expect(rules(third.replace('510 ohm', '1500 ohm'))).toEqual(['terminator-midline', 'bias-weak']);
    expect(rules(small.replace('510 ohm', '200 ohm'))).toEqual(['driver-overloaded', 'terminator-value']);
  });
});

it('tells a bias that cannot be understood, and not that there is none besides', () => {
  const text = loadExample({ needsBias: true, more: ['bias at head switch'] });
  expect(checkText(text, ['bias-switch-missing', 'bias-missing']).map(({ rule }) => rule)).toEqual([
    'bias-switch-missing',
  ]);
});

it('advises no resistors where the kind of bus takes no bias', () => {
  const text = loadExample({ more: ['bias at head switch'] }).replace('modbus-rtu 19200 8E1', 'can 125 kbit/s');
  const [finding] = checkText(text, ['bias-switch-missing']);
  expect(finding).toBeUndefined();
  const landed = text.replaceAll(': rs485', ': can');
  const [told] = checkText(landed, ['bias-switch-missing']);
  expect(told?.message).toMatch(/and a can bus takes none: remove this line$/);
  expect(told?.fixes()).toEqual([]);
});
