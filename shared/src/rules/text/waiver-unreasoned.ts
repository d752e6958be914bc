import type { TextRule } from '../rule.js';

export const waiverUnreasoned: TextRule = {
  id: 'waiver-unreasoned',
  scope: 'text',
  severity: 'error',
  kinds: 'every',
  explanation: {
    what: 'A waiver gives no reason. Such a waiver waives nothing.',
    why:
      'A finding that somebody decided to live with must say why, or the next one who changes the bus cannot ' +
      'tell whether the decision still holds.',
    field: 'Years later nobody knows whether the odd spot in the wiring is agreed or forgotten.',
    mend: 'Add `because "REASON"`: who agreed to it, and under which condition.',
    bad: `device DriveBoard {
  port field : rs485
}
store northgate {
  bus chillers : modbus-rtu {
    from compressor1 : DriveBoard
    38 ft to compressor2 : DriveBoard terminate resistor 120 ohm
    waive end-unterminated at compressor1
  }
}
`,
    good: `device DriveBoard {
  port field : rs485
}
store northgate {
  bus chillers : modbus-rtu {
    from compressor1 : DriveBoard
    38 ft to compressor2 : DriveBoard terminate resistor 120 ohm
    waive end-unterminated at compressor1 because "terminator on order, agreed in change 41"
  }
}
`,
    sources: ['definition of the .pair language'],
    since: '0.1.0',
  },
};
