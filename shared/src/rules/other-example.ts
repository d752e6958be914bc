/** The small stores that pages about CAN, free topology and Ethernet show: sound but for what a page is about. */

const store = (heading: string, statements: readonly string[]) =>
  `store northgate {\n  bus ${heading} {\n${statements.map((line) => `    ${line}\n`).join('')}  }\n}\n`;

interface CanVariation {
  readonly rate?: string;
  /** Of every board's port: what it takes there and back. */
  readonly delay?: string;
  /** Of every port, between the wires. */
  readonly resistance?: string;
  readonly conductor?: string;
}

/** A CAN bus of these statements; its head has a terminator to switch on, its boards have none. */
export function canExample(statements: readonly string[], variation: CanVariation = {}): string {
  const { rate = '250 kbit/s', delay, resistance, conductor = '22 AWG stranded' } = variation;
  const port = [
    '    terminals + "CAN_H" - "CAN_L" shield "SH"',
    '    polarity required',
    ...(delay === undefined ? [] : [`    delay ${delay}`]),
    ...(resistance === undefined ? [] : [`    resistance ${resistance}`]),
  ];
  return `cable CanPair {
  conductor ${conductor}
  twisted pairs 1
  shield foil drain
  impedance 120 ohm
  velocity 66 %
  colours white, blue
}
device RackHead {
  role head
  port link : can {
${[...port, '    terminator switch 120 ohm'].join('\n')}
  }
}
device ValveBoard {
  port link : can {
${[...port, '    address switches 1..63'].join('\n')}
  }
}
${store(`rack : can ${rate} on CanPair`, [...statements, 'shield earthed at head', 'colours + white - blue shield drain'])}`;
}

/** A free-topology segment of these statements on unshielded cable of level IV. */
export const segmentExample = (statements: readonly string[], cable = 'class level-4'): string =>
  `cable Level4Pair {
  conductor 22 AWG solid
  twisted pairs 1
  shield none
  ${cable}
  colours white, blue
}
device Panel {
  role head
  port ft : free-topology {
    terminals + "A" - "B"
    polarity free
  }
}
device RoomUnit {
  port ft : free-topology {
    terminals + "A" - "B"
    polarity free
  }
}
${store('rooms : free-topology on Level4Pair', [...statements, 'colours + white - blue'])}`;

/** Ethernet links of these statements between a switch of four jacks and panels of one. */
export const linkExample = (statements: readonly string[], cable = 'class category-5e'): string =>
  `cable NetworkCable {
  conductor 24 AWG solid
  twisted pairs 4
  shield none
  impedance 100 ohm
  ${cable}
}
cable Cord26 {
  conductor 26 AWG stranded
  twisted pairs 4
  shield none
  impedance 100 ohm
}
device NetSwitch {
${[1, 2, 3, 4].map((jack) => `  port p${jack} : ethernet\n`).join('')}}
device Panel {
  port net : ethernet
}
${store('host : ethernet 100 Mbit/s on NetworkCable', statements)}`;
