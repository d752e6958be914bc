import type { TextRule } from '../rule.js';

export const notOnBus: TextRule = {
  id: 'not-on-bus',
  scope: 'text',
  severity: 'error',
  kinds: 'every',
  explanation: {
    what:
      'A statement about a bus names a landing that this bus does not have. Shields are earthed, bias is ' +
      'applied and findings are waived at landings.',
    why: 'The statement has no effect: the shield stays unearthed and the pair without bias as far as the text goes.',
    field: 'The list promises an earthed shield or a biased line at a box that the cable never reaches.',
    mend: 'Name a landing of this bus, or land the node on it.',
    bad: `device DriveBoard {
  port field : rs485
}
store northgate {
  node compressor3 : DriveBoard
  bus chillers : modbus-rtu {
    from compressor1 : DriveBoard
    38 ft to compressor2 : DriveBoard
    shield earthed at compressor3
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
    shield earthed at compressor1
  }
}
`,
    sources: ['definition of the .pair language'],
    since: '0.1.0',
  },
};
