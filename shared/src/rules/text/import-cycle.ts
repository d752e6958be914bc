import type { TextRule } from '../rule.js';

export const importCycle: TextRule = {
  id: 'import-cycle',
  scope: 'text',
  severity: 'warning',
  kinds: 'every',
  explanation: {
    what:
      'A file imports itself, directly or by way of others. It is read once; the import that closes the circle ' +
      'adds nothing.',
    why:
      'A circle does no harm to the figures. It hides which file depends on which, so that a change of one ' +
      'seems to touch all.',
    field: 'A catalogue cannot be copied to another job without the stores that use it.',
    mend: 'Remove the import that closes the circle: a catalogue imports no store.',
    bad: `import "test.pair"
store northgate {
}
`,
    good: `store northgate {
}
`,
    sources: ['definition of the .pair language'],
    since: '0.1.0',
  },
};
