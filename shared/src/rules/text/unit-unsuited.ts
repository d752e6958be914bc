import type { TextRule } from '../rule.js';

export const unitUnsuited: TextRule = {
  id: 'unit-unsuited',
  scope: 'text',
  severity: 'error',
  kinds: 'every',
  explanation: {
    what: 'A unit does not exist, or measures something else than what is due here. For example a length in ohms.',
    why: 'The value cannot be converted to what the computation needs, so it stays unknown.',
    field: 'Figures that say what they lack, though the text seems to give it.',
    mend: 'Write one of the units that the message names.',
    bad: `cable ShieldedPair {
  impedance 120 ft
}
`,
    good: `cable ShieldedPair {
  impedance 120 ohm
}
`,
    sources: ['from memory of NIST Special Publication 811 (2008), section 7: a value is a number and a unit'],
    since: '0.1.0',
  },
};
