/** Whole `.pair` files for the pages of the rules about shape and ends: one catalogue, one bus. */
import type { BusKind } from '../../network.js';

/** A file with one bus named `cases` that holds the given statements, one a line. */
export function exampleOf(statements: readonly string[], kind: BusKind = 'modbus-rtu'): string {
  const rate = kind === 'modbus-rtu' ? ' 19200 8E1' : '';
  return `cable ShieldedPair22 "22 AWG shielded pair" {
  conductor 22 AWG stranded
  twisted pairs 1
  shield foil drain
  impedance 120 ohm
  capacitance 12.5 pF/ft
  velocity 66 %
}

device SiteHead "Site controller" {
  role head
  port field : rs485 {
    terminals + "+" - "-" shield "SH"
    load 1/8
    terminator switch 120 ohm
    edge 250 ns
  }
}

device CaseBoard "Case controller" {
  port field : rs485 {
    terminals + "+" - "-" shield "SH"
    load 1/8
    terminator switch 120 ohm
    address dial 1..99
    edge 250 ns
  }
}

device AirProbe "Air probe" {
  port field : rs485 {
    terminals + "+" - "-" shield "SH"
    load 1/8
    address dial 1..99
    edge 250 ns
  }
}

store market "Demo market" {
  bus cases "Display cases" : ${kind}${rate} on ShieldedPair22 {
${statements.map((statement) => `    ${statement}`).join('\n')}
    shield earthed at head
    bias at head 560 ohm
  }
}
`;
}
