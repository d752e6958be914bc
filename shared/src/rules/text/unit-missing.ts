import type { TextRule } from '../rule.js';

export const unitMissing: TextRule = {
  id: 'unit-missing',
  scope: 'text',
  severity: 'error',
  kinds: 'every',
  explanation: {
    what:
      'A number stands where a quantity with its unit is due. Only a rate may go without: it is in bits per ' +
      'second.',
    why: '38 feet and 38 metres differ by a factor of three. No unit is assumed, so the value stays unknown.',
    field: 'A cable that is cut three times too short, or a bus that was reckoned in feet and pulled in metres.',
    mend: 'Write the unit behind the number; the quick fixes offer the likely ones.',
    bad: `cable ShieldedPair {
  impedance 120
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
