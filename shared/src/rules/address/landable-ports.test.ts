import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { fixText } from '../../../../language/src/testing/fix-text.js';
import { exampleCable, exampleHead, exampleStore, soundRemarks } from '../pair/example.js';

const board = `device CaseBoard {
  port link : can
  port field : rs485 {
    terminals + "D+" - "D-" shield "SH"
    load 1/8
    address dial 20..99
    rates 9600, 19200
  }
}
`;
const textOf = (rate: string) =>
  exampleCable +
  exampleHead +
  board +
  exampleStore(
    `from head : SiteHead terminate switch
38 ft to caseA1.link : CaseBoard address 11 terminate switch
${soundRemarks}`,
    `modbus-rtu ${rate} 8E1 on ShieldedPair22`,
  );

it('takes address and terminator to what the other port has', () => {
  const text = textOf('9600');
  const [finding] = checkText(text, ['port-kind-mismatch']);
  expect(finding?.fixes().map(({ title }) => title)).toEqual([
    'Land on caseA1.field, with address 20, which it can be set to, terminated with a 120 ohm resistor',
  ]);
  const mended = fixText(text, finding!);
  expect(mended).toContain('38 ft to caseA1.field : CaseBoard address 20 terminate resistor 120 ohm\n');
  expect(checkText(mended).map(({ rule }) => rule)).toEqual([]);
});

it('offers no port that the rate of the bus is too fast for', () => {
  expect(checkText(textOf('38400'), ['port-kind-mismatch'])[0]?.fixes()).toEqual([]);
});
