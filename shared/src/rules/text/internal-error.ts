import type { TextRule } from '../rule.js';

export const internalError: TextRule = {
  id: 'internal-error',
  scope: 'text',
  severity: 'warning',
  kinds: 'every',
  explanation: {
    what: 'A rule of Fieldpair itself failed on this bus or store. The other rules were applied all the same.',
    why: 'What the failed rule looks for was not judged: its silence means nothing here.',
    field: 'Nothing is known to be wrong with the wiring; the mistake is in Fieldpair.',
    mend:
      'Please report it, with the file that shows it. Until it is mended, check by hand what the named rule ' +
      'looks for.',
    bad: `// No text is meant to bring this finding about; one that does shows a mistake in Fieldpair.
store northgate {
}
`,
    good: `store northgate {
}
`,
    sources: ['common practice, no published source'],
    since: '0.1.0',
  },
};
