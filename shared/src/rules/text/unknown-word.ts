import type { TextRule } from '../rule.js';

export const unknownWord: TextRule = {
  id: 'unknown-word',
  scope: 'text',
  severity: 'error',
  kinds: 'every',
  explanation: {
    what:
      'A word is none of those that can stand here. Kinds of bus, roles, makes of conductor, kinds of shield ' +
      'and ids of rules come from short lists.',
    why: 'The value that the word should give stays unknown, and with it everything that is computed from it.',
    field:
      'A cable whose make is unknown, or a bus whose kind is unknown, is left out of the judgement although the ' +
      'text looks complete.',
    mend: 'Use one of the words that the message lists.',
    bad: `cable ShieldedPair {
  conductor 22 AWG strandid
}
`,
    good: `cable ShieldedPair {
  conductor 22 AWG stranded
}
`,
    sources: ['definition of the .pair language'],
    since: '0.1.0',
  },
};
