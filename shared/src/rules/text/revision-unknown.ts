import type { TextRule } from '../rule.js';

export const revisionUnknown: TextRule = {
  id: 'revision-unknown',
  scope: 'text',
  severity: 'error',
  kinds: 'every',
  explanation: {
    what: 'A revision is named that the device does not come in.',
    why:
      'Revisions differ in what their ports can do: a port that is reserved on one may be enabled on the next. ' +
      'With an unknown revision that cannot be told.',
    field:
      'The connector is there and the bus is landed on it, yet nothing answers, because this revision does not ' +
      'use it.',
    mend:
      'Read the revision off the label of the device and write that one; if it is new, add it to the device in ' +
      'the catalogue.',
    bad: `device DriveBoard {
  revision A, B
  port field : rs485
}
store northgate {
  node compressor1 : DriveBoard revision D
}
`,
    good: `device DriveBoard {
  revision A, B
  port field : rs485
}
store northgate {
  node compressor1 : DriveBoard revision B
}
`,
    sources: ['definition of the .pair language'],
    since: '0.1.0',
  },
};
