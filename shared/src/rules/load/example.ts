/** A small sound store whose bias is the only thing that its pages vary. */
export const biasExample = (resistors: string): string => `cable Pair22 {
  conductor 22 AWG stranded
  twisted pairs 1
  shield foil drain
  impedance 120 ohm
}
device Panel {
  role head
  port field : rs485 {
    terminals + "D+" - "D-" shield "SH"
    load 1/8
    terminator switch 120 ohm
  }
}
device Board {
  port field : rs485 {
    terminals + "D+" - "D-" shield "SH"
    load 1/8
    terminator switch 120 ohm
    address dial 1..247
  }
}
store northgate {
  node head : Panel
  bus cases : modbus-rtu 19200 8E1 on Pair22 {
    from head terminate switch
    40 ft to a : Board address 1
    40 ft to b : Board address 2 terminate switch
    shield earthed at head
    colours + white - blue
    bias at head ${resistors}
  }
}
`;

/** A store with so many devices, the head among them, whose loads nobody documented. */
export function crowdExample(devices: number): string {
  const runs = Array.from(
    { length: devices - 1 },
    (_, index) =>
      `    10 ft to n${index + 1} : Board address ${index + 1}${index === devices - 2 ? ' terminate switch' : ''}`,
  );
  return biasExample('510 ohm')
    .replaceAll('    load 1/8\n', '')
    .replace('    bias at head 510 ohm\n', '')
    .replace(/ {4}40 ft to a .*\n.*\n/, `${runs.join('\n')}\n`);
}
