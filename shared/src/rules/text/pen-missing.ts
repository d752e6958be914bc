import type { TextRule } from '../rule.js';

export const penMissing: TextRule = {
  id: 'pen-missing',
  scope: 'text',
  severity: 'error',
  kinds: 'every',
  explanation: {
    what: 'The first run of a bus comes before any `from`. So it is not known where the run starts.',
    why:
      'A run has two ends. Without the first one the bus has no beginning, and neither its length nor its ends ' +
      'can be told.',
    field: 'Whoever pulls the cable knows where it goes and not where it comes from.',
    mend: 'Write `from LANDING` before the first run of the bus.',
    bad: `device DriveBoard {
  port field : rs485
}
store northgate {
  bus chillers : modbus-rtu {
    38 ft to compressor1 : DriveBoard
  }
}
`,
    good: `device DriveBoard {
  port field : rs485
}
store northgate {
  bus chillers : modbus-rtu {
    from compressor1 : DriveBoard
    38 ft to compressor2 : DriveBoard
  }
}
`,
    sources: ['definition of the .pair language'],
    since: '0.1.0',
  },
};
