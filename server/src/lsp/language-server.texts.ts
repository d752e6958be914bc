/** The files that the language server is tested on. */

export const catalogue = `cable Pair22 "one pair" {
  conductor 22 AWG stranded
  twisted pairs 1
  impedance 120 ohm
  velocity 66 %
}
/// Sits on the rack.
device Head { role head port field : rs485 { terminals + "A" - "B" } }
device Board {
  port field : rs485 { terminals + "A" - "B" address dial 1..99 }
  port aux : can
}
`;
export const store = `import "catalogue.pair"

store northgate {
  node head : Head
  bus cases : modbus-rtu 19200 8E1 on Pair22 {
    from head terminate resistor 120 ohm
    100 ft to caseA : Board address 11
    50 ft to caseB : Board address 14
  }
}
`;
export const wrong = store.replace('on Pair22', 'on Pear22');
