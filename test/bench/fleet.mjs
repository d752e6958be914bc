/** A fleet of stores that exist nowhere: the same seed gives the same texts. */
function numbers(seed) {
  let state = seed >>> 0;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

const busNames = ['chillers', 'freezers', 'produce', 'rack'];

/** One store of about 100 nodes on four buses, as plain data. */
export function storeData(index) {
  const pick = numbers(index + 1);
  return {
    store: `store${index}`,
    label: `Market ${index}`,
    buses: busNames.map((name, bus) => ({
      name,
      kind: 'modbus-rtu',
      rate: 19200,
      format: '8E1',
      cable: 'ShieldedPair22',
      from: { node: 'head', port: `field${bus + 1}`, terminate: 'switch' },
      runs: Array.from({ length: 25 }, (_, at) => ({
        length: 8 + pick(40),
        unit: 'ft',
        to: `${name}${at + 1}`,
        device: 'CaseBoard',
        address: at + 1,
        ...(at === 24 ? { terminate: 'switch' } : {}),
      })),
      shield: { earthed: 'head' },
      colours: { plus: 'white', minus: 'blue' },
    })),
  };
}

export function storeText({ store, label, buses }) {
  const lines = ['import "catalogue.pair"', '', `store ${store} "${label}" {`, '  node head : SiteHead', ''];
  for (const bus of buses) {
    lines.push(`  bus ${bus.name} : ${bus.kind} ${bus.rate} ${bus.format} on ${bus.cable} {`);
    lines.push(`    from head.${bus.from.port} terminate ${bus.from.terminate}`);
    for (const { length, unit, to, device, address, terminate } of bus.runs) {
      lines.push(
        `    ${length} ${unit} to ${to} : ${device} address ${address}${terminate ? ` terminate ${terminate}` : ''}`,
      );
    }
    lines.push('    shield earthed at head', '    colours + white - blue', '  }', '');
  }
  return `${lines.join('\n')}}\n`;
}

/** One bus of many landings, one after the other; a ring comes back to where it began. */
export function chainText(landings, isRing) {
  const run = (at) => `    ${20 + (at % 7)} ft to case${at} : CaseBoard`;
  return `import "catalogue.pair"
store long {
  node head : SiteHead
  bus chain : rs485 19200 on ShieldedPair22 {
    from head.field1 terminate switch
${Array.from({ length: landings - 1 }, (_, at) => run(at + 1)).join('\n')}${isRing ? '\n    20 ft to head.field1' : ''}
    bias at head 560 ohm
  }
}
`;
}

const port = (name) => `  port ${name} : rs485 {
    terminals + "D+" - "D-" shield "SH"
    speaks modbus-rtu
    polarity required
    load 1/8
    terminator switch 120 ohm`;

export const catalogueText = `cable ShieldedPair22 "22 AWG shielded pair" {
  conductor 22 AWG stranded
  twisted pairs 1
  shield foil drain
  impedance 120 ohm
  capacitance 12.5 pF/ft
  velocity 66 %
}

device SiteHead "Site head" {
  role head
${[1, 2, 3, 4].map((number) => `${port(`field${number}`)}\n  }`).join('\n')}
}

device CaseBoard "Case controller" {
${port('field')}
    address dial 1..99
  }
}
`;
