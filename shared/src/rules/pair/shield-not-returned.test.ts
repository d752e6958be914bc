import { expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { soundFile } from './example.js';

const found = (text: string) => checkText(text, ['shield-not-returned']);

const floating = soundFile.replace('from head : SiteHead', 'from head : SiteHead shield floating');

it('wants the shield at the terminal of the head', () => {
  expect(found(floating)[0]?.message).toContain('land it at terminal SH');
  expect(found(floating.replace('floating', 'open'))).toHaveLength(1);
});

it('accepts a shield that is earthed at another single point', () => {
  expect(found(floating.replace('shield earthed at head', 'shield earthed at caseA2'))).toEqual([]);
});

it('remarks on a head without such a terminal', () => {
  const [finding] = found(soundFile.replace(' shield "SH"', ''));
  expect(finding?.severity).toBe('info');
  expect(finding?.message).toContain('no shield terminal');
});

it('has nothing to say about unshielded cable', () => {
  expect(found(floating.replace('shield foil drain', 'shield none'))).toEqual([]);
});
