import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { soundFile } from './example.js';

const found = (text: string) => checkText(text, ['shield-gap']);

const cut = soundFile.replace('address 11', 'address 11 shield open');

it('finds a cut between two cables, not one at an end', () => {
  expect(found(cut).map(({ at }) => at)).toEqual(['caseA1']);
  expect(found(soundFile.replace('address 12', 'address 12 shield open'))).toEqual([]);
});

it('takes a cut between two earthed stretches for what it is', () => {
  // Modbus serial line guide V1.02, 3.6: the shield of each cable is earthed at one end.
  const sections = cut.replace('shield earthed at head', 'shield earthed at head\n    shield earthed at caseA2');
  expect(checkText(sections, ['shield-gap', 'shield-earthed-twice'])).toEqual([]);
});

it('finds a bare stretch', () => {
  const bare = `cable Bare22 {\n  conductor 22 AWG stranded\n  twisted pairs 1\n  shield none\n  impedance 120 ohm\n}\n${soundFile.replace('22 ft to', '22 ft on Bare22 to')}`;
  const [finding, ...others] = checkText(bare, ['shield-gap', 'mixed-cable', 'cable-unsuited']);
  expect(others).toEqual([]);
  expect(finding?.message).toContain('22 ft of bus chillers run on Bare22, which has no shield');
});
