/** The stores that the pages of this folder show: small and sound but for what a page is about. */

interface Variation {
  /** Unit load of every board; undefined leaves it unsaid, on the head too. */
  readonly load?: string | undefined;
  readonly rate?: string;
  /** Lengths of the runs, one board each; the last one is terminated. */
  readonly runs?: readonly string[];
  readonly needsBias?: boolean;
  /** A repeater in the catalogue. */
  readonly repeater?: boolean;
  /** Further statements of the bus. */
  readonly more?: readonly string[];
}

export function loadExample(variation: Variation = {}): string {
  const { rate = '19200', runs = ['40 ft', '40 ft'], needsBias = false, repeater = false, more = [] } = variation;
  const load = 'load' in variation ? variation.load : '1/8';
  const shares = (share: string | undefined) => (share === undefined ? [] : [`    load ${share}`]);
  return `${[
    'cable Pair22 {',
    '  conductor 22 AWG stranded',
    '  twisted pairs 1',
    '  shield foil drain',
    '  impedance 120 ohm',
    '}',
    'device Panel {',
    '  role head',
    '  port field : rs485 {',
    '    terminals + "D+" - "D-" shield "SH"',
    ...shares(load),
    '    terminator switch 120 ohm',
    '  }',
    '}',
    'device Board {',
    '  port field : rs485 {',
    '    terminals + "D+" - "D-" shield "SH"',
    ...shares(load),
    '    terminator switch 120 ohm',
    '    address dial 1..247',
    ...(needsBias ? ['    bias needed'] : []),
    '  }',
    '}',
    ...(repeater ? repeaterOf(shares(load)) : []),
    'store northgate {',
    '  node head : Panel',
    `  bus cases : modbus-rtu ${rate} 8E1 on Pair22 {`,
    '    from head terminate switch',
    ...runs.map(
      (length, at) =>
        `    ${length} to n${at + 1} : Board address ${at + 1}${at === runs.length - 1 ? ' terminate switch' : ''}`,
    ),
    '    shield earthed at head',
    '    colours + white - blue',
    ...more.map((statement) => `    ${statement}`),
    '  }',
    '}',
  ].join('\n')}\n`;
}

/** So many devices, the head among them. */
export const crowd = (devices: number): string[] => Array.from({ length: devices - 1 }, () => '10 ft');

/** Both its ports load the bus as a board does. */
const repeaterOf = (load: readonly string[]): string[] => [
  'device Repeater {',
  '  role repeater',
  ...['left', 'right'].flatMap((port) => [
    `  port ${port} : rs485 {`,
    '    terminals + "D+" - "D-" shield "SH"',
    ...load,
    '    terminator switch 120 ohm',
    '  }',
  ]),
  '}',
];
