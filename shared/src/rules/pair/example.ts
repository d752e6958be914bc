/** The small sound store that the pages of the pair, shield, address and port rules vary. */

/** A cable that suits every RS-485 bus. */
export const exampleCable = `cable ShieldedPair22 {
  conductor 22 AWG stranded
  twisted pairs 1
  shield foil drain
  impedance 120 ohm
  capacitance 12.5 pF/ft
  velocity 66 %
  colours white, blue
}
`;

export const exampleHead = `device SiteHead {
  role head
  port field : rs485 {
    terminals + "D+" - "D-" shield "SH"
    polarity required
    load 1/8
    terminator switch 120 ohm
  }
}
`;

export const exampleBoard = `device CaseBoard {
  port field : rs485 {
    terminals + "D+" - "D-" shield "SH"
    polarity required
    load 1/8
    address dial 1..99
  }
}
`;

/** A store of these statements, with a bus that is sound but for what they say. */
export function exampleStore(statements: string, heading = 'modbus-rtu 9600 8E1 on ShieldedPair22'): string {
  const lines = statements.trim().split('\n');
  return `store northgate {
  bus chillers : ${heading} {
${lines.map((line) => `    ${line.trim()}`).join('\n')}
  }
}
`;
}

/** The whole file: cable, head, board and store. */
export const exampleFile = (statements: string, heading?: string): string =>
  exampleCable + exampleHead + exampleBoard + exampleStore(statements, heading);

/** What the sound bus says of its shield and conductors. */
export const soundRemarks = `shield earthed at head
colours + white - blue shield drain`;

/** The sound bus. */
export const soundFile = exampleFile(`from head : SiteHead terminate switch
38 ft to caseA1 : CaseBoard address 11
22 ft to caseA2 : CaseBoard address 12 terminate resistor 120 ohm
${soundRemarks}`);
