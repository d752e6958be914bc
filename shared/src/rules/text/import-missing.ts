import type { TextRule } from '../rule.js';

export const importMissing: TextRule = {
  id: 'import-missing',
  scope: 'text',
  severity: 'error',
  kinds: 'every',
  explanation: {
    what: 'An imported file is not there. Paths count from the folder of the importing file.',
    why: 'The devices and cables that the file declares are unknown, so nothing that depends on them can be judged.',
    field: 'A copied or moved store whose catalogue stayed behind: every landing is without ports and figures.',
    mend: 'Correct the path, or add the file.',
    bad: `import "no-such-catalogue.pair"
store northgate {
}
`,
    good: `device DriveBoard {
  port field : rs485
}
store northgate {
  node compressor1 : DriveBoard
}
`,
    sources: ['definition of the .pair language'],
    since: '0.1.0',
  },
};
