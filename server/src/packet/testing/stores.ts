/** Packets for tests of formats, out of the text of stores. */
import { Project } from '@fieldpair/language';
import { createStudy } from '@fieldpair/shared';
import { makePacket, type Packet, type PacketOptions } from '@fieldpair/shared/documents';
import { findingsOf } from '../store-findings.js';

const file = 'store.pair';

/** The first store of a text. */
export function packetOf(text: string, options: Partial<PacketOptions> = {}): Packet {
  const project = new Project({ resolve: (_, path) => path, read: () => ({ problem: 'it does not exist' }) });
  project.add(file, text);
  const [store] = project.storesOf(file);
  if (!store) throw new Error('the test has no store');
  const studies = store.buses.map((bus) => createStudy(store, bus));
  return makePacket(store, studies, { date: '2026-03-14', findings: findingsOf(project, store, [file]), ...options });
}

/** Names that mean something to one format or another. */
export const hostileNames = [
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  "=cmd|' /C calc'!A0",
  '+1+1',
  '-2+3',
  '@SUM(1+1)',
  'a&b;c</style>]]>--><!--',
  '../../etc/passwd',
  'slash/and\\backslash',
  '\u05d3\u05dc\u05ea \u05d7\u05d3\u05e8 \u05e7\u05d9\u05e8\u05d5\u05e8',
  'left\u202eright\u200f',
  'Gefrierraumt\u00fcr\u00fcberwachungssteuerungserweiterungsbaugruppe',
  '\u51b7\u51cd\u5eab',
  'ring "of" $(quotes) `x` %00 &amp; \\L&R',
  'x'.repeat(500),
];

const quoted = (text = '') => `"${text.replace(/[\\"]/g, '\\$&')}"`;

const device = (role: string, name: string, address: string) => `device ${name} ${quoted(hostileNames[0])} {
  role ${role}
  revision ${quoted(hostileNames[2])}
  port field ${quoted(hostileNames[6])} : rs485 {
    terminals + "=D+" - "<D->" shield "SH&"
    speaks modbus-rtu
    load 1/8
    terminator switch 120 ohm
    ${address}
  }
  indicator poll ${quoted(hostileNames[1])}
  mark ${quoted(hostileNames[3])}
}
`;

/** A store in which everything that can have a name has a hostile one. */
export const hostileStore = `cable "=Pair()" ${quoted(hostileNames[0])} {
  conductor 22 AWG stranded
  twisted pairs 1
  shield foil drain
  impedance 120 ohm
  capacitance 42 pF/m
  velocity 66 %
}
${device('head', 'Head', 'address software 1..247')}${device('node', 'Board', 'address switches 1..63 of 6 least-first up-is-on')}
/// ${hostileNames[4]} ${hostileNames[1]}
store "../../x" ${quoted(hostileNames[5])} {
  node head ${quoted(hostileNames[13])} : Head
  bus "<b>" ${quoted(hostileNames[1])} : modbus-rtu 19200 8E1 on "=Pair()" {
    from head terminate switch
${hostileNames.map((name, index) => `    ${10 + index} ft to ${quoted(name)} ${quoted(name)} : Board address ${index + 1}${index === hostileNames.length - 1 ? ' terminate switch' : ''}`).join('\n')}
    shield earthed at head
    bias at head 560 ohm
    colours + white - blue shield drain
  }
}
`;

export const plainStore = `cable Pair22 "22 AWG pair" {
  conductor 22 AWG stranded
  twisted pairs 1
  shield foil drain
  impedance 120 ohm
  capacitance 42 pF/m
  velocity 66 %
}
device Head {
  role head
  port field : rs485 { terminals + "D+" - "D-" shield "SH" load 1/8 terminator switch 120 ohm }
}
device Board "Case controller" {
  port field : rs485 { terminals + "D+" - "D-" shield "SH" load 1/8 address dial 1..99 of 2 terminator switch 120 ohm }
}
store northgate "Northgate Market" {
  node head : Head
  bus cases "Cases" : modbus-rtu 19200 8E1 on Pair22 {
    from head terminate switch
    38 ft to caseA : Board address 11
    12 ft 6 in built 14 ft to caseB : Board address 12 terminate switch
    shield earthed at head
    bias at head 560 ohm
    colours + white - blue shield drain
  }
}
`;
