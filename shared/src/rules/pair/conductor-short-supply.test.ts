import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { fixText } from '../../../../language/src/testing/fix-text.js';
import { conductorShortSupply } from './conductor-short-supply.js';
import { soundFile } from './example.js';

const found = (text: string) => checkText(text, ['conductor-short-supply']);

const { bad } = conductorShortSupply.explanation;

it('wants a conductor for the common that two devices have a terminal for', () => {
  // Modbus serial line guide V1.02, 3.6: a balanced pair plus a third wire, Common.
  expect(found(bad)[0]?.message).toContain('has 2 conductors and bus chillers needs 3');
  expect(found(bad.replace('white, blue\n', 'white, blue, orange\n'))).toEqual([]);
  expect(found(bad.replaceAll(' common "0V"', ''))).toEqual([]);
});

it('does not take the drain for the common', () => {
  expect(found(soundFile.replace('shield drain\n', 'shield drain common drain\n'))).toHaveLength(1);
});

it('is mended by a cable with more, and the colours follow it', () => {
  const text = bad.replace('white, blue, orange, black', 'red, black, green, yellow');
  const [finding] = found(text);
  expect(finding?.fixes().map(({ title }) => title)).toEqual(['Pull bus chillers on ShieldedTwoPair22']);
  expect(fixText(text, finding!)).toContain('colours + red - black shield drain\n');
  const bare = text.replace(/shield foil drain(?=[^}]*red)/, 'shield none');
  expect(found(bare)[0]?.fixes()).toEqual([]);
});

it('counts pairs of an Ethernet link by its rate', () => {
  const link = (rate: string, pairs: number) =>
    `cable Cat { twisted pairs ${pairs} }\ndevice Box { port net : ethernet }\nstore s { bus lan : ethernet ${rate} on Cat { from a : Box 30 m to b : Box } }\n`;
  // IEEE 802.3: 10BASE-T and 100BASE-TX use two pairs, 1000BASE-T four.
  expect(found(link('100 Mbit/s', 2))).toEqual([]);
  expect(found(link('100 Mbit/s', 1))).toHaveLength(1);
  expect(found(link('1000 Mbit/s', 2))).toHaveLength(1);
  expect(found(link('1000 Mbit/s', 4))).toEqual([]);
});
