import type { TextRule } from '../rule.js';

export const syntax: TextRule = {
  id: 'syntax',
  scope: 'text',
  severity: 'error',
  kinds: 'every',
  explanation: {
    what:
      'A stretch of the text follows no rule of the language. The rest of the file is still read and judged as ' +
      'far as it can be.',
    why:
      'What cannot be read is not in the network: a run that is skipped is missing from every length, reading ' +
      'and count.',
    field:
      'The pull list, the figures and the drawing lack what the damaged line says, or the bus it stands in is ' +
      'not judged at all.',
    mend:
      'Write what the message says is due here. Each statement begins with its keyword or with a length; names ' +
      'that are keywords or hold other characters than letters, digits and underscores stand in quotes.',
    bad: `device DriveBoard {
  port field : rs485
}
store northgate {
  node head DriveBoard
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
