import { isUnknown } from '../../known.js';
import { severityOf } from '../../limits/limit.js';
import { loadLimit } from '../../limits/load.js';
import { formatNumber } from '../../quantity.js';
import type { BusRule } from '../rule.js';

/** Sum of the unit loads that the catalogue states. */
export const loadOverBudget: BusRule = {
  id: 'load-over-budget',
  severity: 'error',
  kinds: ['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485'],
  scope: 'bus',
  check: (study, report) => {
    const limit = loadLimit(study.bus);
    const loads = study.unitLoads;
    if (!limit || isUnknown(loads) || loads <= limit.value) return;
    const over = formatNumber(loads - limit.value, 2);
    report({
      message: `the devices of bus ${study.bus.name} load it with ${formatNumber(loads, 2)} unit loads; ${limit.value} is ${limit.meaning} (${over} over); divide the bus with a repeater or use ports of 1/8 unit load`,
      place: study.bus.place,
      severity: severityOf(limit),
    });
  },
  explanation: {
    what: 'The unit loads of all ports add up to more than a driver must carry.',
    why: 'Each receiver draws a little current; beyond 32 unit loads and two terminators a driver need not reach its 1.5 V.',
    field:
      'The bus works on the bench and grows unsure with each device that is added; levels measured under traffic are low.',
    mend: 'Divide the bus with a repeater, or choose devices of a fraction of a unit load. A device that states none counts as unknown, and then this rule is silent.',
    bad: `cable Pair22 {
  conductor 22 AWG stranded
  twisted pairs 1
  shield foil drain
  impedance 120 ohm
}
device Panel {
  role head
  port field : rs485 {
    terminals + "D+" - "D-" shield "SH"
    load 1
    terminator switch 120 ohm
  }
}
device Board {
  port field : rs485 {
    terminals + "D+" - "D-" shield "SH"
    load 1
    terminator switch 120 ohm
    address dial 1..247
  }
}
store northgate {
  node head : Panel
  bus cases : modbus-rtu 19200 8E1 on Pair22 {
    from head terminate switch
    10 ft to n1 : Board address 1
    10 ft to n2 : Board address 2
    10 ft to n3 : Board address 3
    10 ft to n4 : Board address 4
    10 ft to n5 : Board address 5
    10 ft to n6 : Board address 6
    10 ft to n7 : Board address 7
    10 ft to n8 : Board address 8
    10 ft to n9 : Board address 9
    10 ft to n10 : Board address 10
    10 ft to n11 : Board address 11
    10 ft to n12 : Board address 12
    10 ft to n13 : Board address 13
    10 ft to n14 : Board address 14
    10 ft to n15 : Board address 15
    10 ft to n16 : Board address 16
    10 ft to n17 : Board address 17
    10 ft to n18 : Board address 18
    10 ft to n19 : Board address 19
    10 ft to n20 : Board address 20
    10 ft to n21 : Board address 21
    10 ft to n22 : Board address 22
    10 ft to n23 : Board address 23
    10 ft to n24 : Board address 24
    10 ft to n25 : Board address 25
    10 ft to n26 : Board address 26
    10 ft to n27 : Board address 27
    10 ft to n28 : Board address 28
    10 ft to n29 : Board address 29
    10 ft to n30 : Board address 30
    10 ft to n31 : Board address 31
    10 ft to n32 : Board address 32
    10 ft to n33 : Board address 33 terminate switch
    shield earthed at head
    colours + white - blue
  }
}
`,
    good: `cable Pair22 {
  conductor 22 AWG stranded
  twisted pairs 1
  shield foil drain
  impedance 120 ohm
}
device Panel {
  role head
  port field : rs485 {
    terminals + "D+" - "D-" shield "SH"
    load 1
    terminator switch 120 ohm
  }
}
device Board {
  port field : rs485 {
    terminals + "D+" - "D-" shield "SH"
    load 1
    terminator switch 120 ohm
    address dial 1..247
  }
}
store northgate {
  node head : Panel
  bus cases : modbus-rtu 19200 8E1 on Pair22 {
    from head terminate switch
    10 ft to n1 : Board address 1
    10 ft to n2 : Board address 2
    10 ft to n3 : Board address 3
    10 ft to n4 : Board address 4
    10 ft to n5 : Board address 5
    10 ft to n6 : Board address 6
    10 ft to n7 : Board address 7
    10 ft to n8 : Board address 8
    10 ft to n9 : Board address 9
    10 ft to n10 : Board address 10
    10 ft to n11 : Board address 11
    10 ft to n12 : Board address 12
    10 ft to n13 : Board address 13
    10 ft to n14 : Board address 14
    10 ft to n15 : Board address 15
    10 ft to n16 : Board address 16
    10 ft to n17 : Board address 17
    10 ft to n18 : Board address 18
    10 ft to n19 : Board address 19
    10 ft to n33 : Board address 33 terminate switch
    shield earthed at head
    colours + white - blue
  }
}
`,
    sources: ['TIA-485-A: 32 unit loads beside two terminators'],
    since: '0.1.0',
  },
};
