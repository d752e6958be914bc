import type { TextRule } from '../rule.js';

export const duplicateName: TextRule = {
  id: 'duplicate-name',
  scope: 'text',
  severity: 'error',
  kinds: 'every',
  explanation: {
    what: 'One name is declared twice. Only the first declaration counts.',
    why: 'Everything that mentions the name is taken to mean the first; what the second one says is in no figure.',
    field:
      'Two controllers with one label: a service call goes to the wrong case, and a change is made on the wrong ' +
      'board.',
    mend: 'Rename one of the two, or remove it when both mean the same thing.',
    bad: `device DriveBoard {
  port field : rs485
}
store northgate {
  node compressor1 : DriveBoard
  node compressor1 : DriveBoard
}
`,
    good: `device DriveBoard {
  port field : rs485
}
store northgate {
  node compressor1 : DriveBoard
  node compressor2 : DriveBoard
}
`,
    sources: ['definition of the .pair language'],
    since: '0.1.0',
  },
};
