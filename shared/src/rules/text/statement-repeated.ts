import type { TextRule } from '../rule.js';

export const statementRepeated: TextRule = {
  id: 'statement-repeated',
  scope: 'text',
  severity: 'warning',
  kinds: 'every',
  explanation: {
    what: 'One thing is said twice, or in two ways that cannot both hold. The first one counts.',
    why:
      'A device has one address and one revision, a cable one impedance. Of two statements one is wrong, and ' +
      'the figures follow the first.',
    field:
      'The address on the dial is not the one on the list; the board in the panel is of another revision than ' +
      'the one that was planned for.',
    mend: 'Look at the hardware, keep the statement that holds and remove the other.',
    bad: `cable ShieldedPair {
  impedance 120 ohm
  impedance 100 ohm
}
`,
    good: `cable ShieldedPair {
  impedance 120 ohm
}
`,
    sources: ['definition of the .pair language'],
    since: '0.1.0',
  },
};
