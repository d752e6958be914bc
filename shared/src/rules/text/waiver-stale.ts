import type { TextRule } from '../rule.js';

export const waiverStale: TextRule = {
  id: 'waiver-stale',
  scope: 'text',
  severity: 'warning',
  kinds: 'every',
  explanation: {
    what: 'A waiver covers no finding any more. What it excused was mended, or it names the wrong place.',
    why: 'A stale waiver would silently cover the same fault when it comes back.',
    field: 'The text excuses a fault that is not there; the reader wonders which of the two is out of date.',
    mend: 'Remove the waiver, or correct the name behind `at`.',
    bad: `device DriveBoard {
  port field : rs485
}
store northgate {
  bus chillers : modbus-rtu {
    from compressor1 : DriveBoard terminate resistor 120 ohm
    38 ft to compressor2 : DriveBoard terminate resistor 120 ohm
    waive end-unterminated at compressor1 because "terminator on order, agreed in change 41"
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
