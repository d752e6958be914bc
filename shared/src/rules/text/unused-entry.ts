import type { TextRule } from '../rule.js';

export const unusedEntry: TextRule = {
  id: 'unused-entry',
  scope: 'text',
  severity: 'info',
  kinds: 'every',
  explanation: {
    what:
      'A cable or device is declared that no checked store uses. In a catalogue that is shared with others this is ' +
      'as it should be. A file of which no entry is used is told once.',
    why:
      'It does no harm. It is often what remains of a renamed or replaced part, and it may mislead whoever ' +
      'reads the file.',
    field: 'A device on the list that nobody finds in the store.',
    mend: 'Remove the entry, or keep it for the stores that will use it.',
    bad: `device DriveBoard {
  port field : rs485
}
device OldDriveBoard {
  port field : rs485
}
store northgate {
  node compressor1 : DriveBoard
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
