import type { TextRule } from '../rule.js';

export const biasSwitchMissing: TextRule = {
  id: 'bias-switch-missing',
  scope: 'text',
  severity: 'warning',
  kinds: 'every',
  explanation: {
    what:
      'The text switches on a bias that the device does not have. Only a port whose catalogue entry says `bias ' +
      'switch` can do so.',
    why:
      'Without bias an idle pair floats between its wires, and a receiver may read noise as the start of a ' +
      'character.',
    field:
      'Sporadic framing errors and lost replies, mostly when the bus is quiet, while everybody believes that ' +
      'the bias is on.',
    mend:
      'Bias at a device that can do it, or write the resistors that are really fitted, such as `bias at head ' +
      '560 ohm`.',
    bad: `device SiteHead {
  role head
  port field : rs485
}
device DriveBoard {
  port field : rs485
}
store northgate {
  bus chillers : modbus-rtu {
    from head : SiteHead
    38 ft to compressor1 : DriveBoard
    bias at head switch
  }
}
`,
    good: `device SiteHead {
  role head
  port field : rs485 {
    bias switch 560 ohm
  }
}
device DriveBoard {
  port field : rs485
}
store northgate {
  bus chillers : modbus-rtu {
    from head : SiteHead
    38 ft to compressor1 : DriveBoard
    bias at head switch
  }
}
`,
    sources: ['MODBUS over Serial Line, Specification and Implementation Guide V1.02, 3.4.6 (what the bias is for)'],
    since: '0.1.0',
  },
};
