import type { TextRule } from '../rule.js';

export const importUnreadable: TextRule = {
  id: 'import-unreadable',
  scope: 'text',
  severity: 'error',
  kinds: 'every',
  explanation: {
    what:
      'An imported path is there and cannot be read. It may be a folder, a file without permission, or larger ' +
      'than what is read.',
    why: 'The devices and cables that it should declare are unknown, so nothing that depends on them can be judged.',
    field:
      'A store that is judged on one machine and not on the other, because the catalogue lies where only one ' +
      'may read.',
    mend: 'Name a file instead of a folder, give permission to read it, or split it when it is too large.',
    bad: `// In place of a file this names the folder that holds it.
import "."
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
