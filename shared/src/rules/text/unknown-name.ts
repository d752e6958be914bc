import type { TextRule } from '../rule.js';

export const unknownName: TextRule = {
  id: 'unknown-name',
  scope: 'text',
  severity: 'error',
  kinds: 'every',
  explanation: {
    what:
      'A name stands for nothing that is declared. It may be a cable, a device, a port or a node that is ' +
      'misspelt, or whose file is not imported.',
    why:
      'A landing whose device is unknown has no port, no load, no terminator and no address range, so nothing ' +
      'that depends on them can be computed.',
    field:
      'Whoever pulls the cable looks for a box that is on no drawing, or lands on another one with a similar ' +
      'name.',
    mend: 'Correct the spelling, declare the name, or import the file that declares it.',
    bad: `device DriveBoard {
  port field : rs485
}
store northgate {
  node head : DriveBord
}
`,
    good: `device DriveBoard {
  port field : rs485
}
store northgate {
  node head : DriveBoard
}
`,
    sources: ['definition of the .pair language'],
    since: '0.1.0',
  },
};
