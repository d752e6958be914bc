import type { TextRule } from '../rule.js';

export const valueImpossible: TextRule = {
  id: 'value-impossible',
  scope: 'text',
  severity: 'error',
  kinds: 'every',
  explanation: {
    what:
      'A value lies outside of what can physically be. A run of no length, a negative resistance, an address ' +
      'range that runs backwards.',
    why:
      'Such a number is a slip of the keyboard; computing with it would give figures that look exact and mean ' +
      'nothing.',
    field: 'The bus seems far too long or far too short, or its readings cannot be met by any wiring.',
    mend: "Correct the number or its unit after the drawing, the label or the maker's data sheet.",
    bad: `cable ShieldedPair {
  impedance 0 ohm
}
`,
    good: `cable ShieldedPair {
  impedance 120 ohm
}
`,
    sources: ['definition of the .pair language; bounds are physical (lengths above 0, resistances 0 or more)'],
    since: '0.1.0',
  },
};
