/** The stores that the pages of this folder show: one supply, sound but for what a page is about. */

interface Variation {
  /** What the source supplies. */
  readonly source?: string;
  /** What each board draws. */
  readonly board?: string;
  /** Conductor of the cable, and what else is said of it. */
  readonly conductor?: string;
  /** What follows in the bus: colours in any case. */
  readonly more?: readonly string[];
  /** The store has a thicker cable as well, for another supply. */
  readonly thicker?: boolean;
}

/** A file with one supply that holds the given statements, one a line. */
export function supplyExample(statements: readonly string[], variation: Variation = {}): string {
  const {
    source = '24 V dc within 2 % limit 4 A class 2',
    board = '0.4 A dc above 19 V below 30 V',
    conductor = '16 AWG stranded',
    more = [],
    thicker = false,
  } = variation;
  return `${[
    'cable PowerPair {',
    `  conductor ${conductor}`,
    '  untwisted',
    '  shield none',
    '  colours red, black',
    '}',
    ...(thicker ? ['cable ThickPair {', '  conductor 10 AWG stranded', '  colours red, black', '}'] : []),
    'device PowerBox {',
    '  port out : supply {',
    '    terminals + "V+" - "V-"',
    `    supplies ${source}`,
    '  }',
    '}',
    'device Board {',
    '  port power : supply {',
    '    terminals + "24" - "0"',
    '    polarity required',
    `    draws ${board}`,
    '  }',
    '}',
    'store northgate {',
    '  bus power : supply on PowerPair {',
    '    from psu : PowerBox',
    ...statements.map((statement) => `    ${statement}`),
    '    colours + red - black',
    ...more.map((statement) => `    ${statement}`),
    '  }',
    ...(thicker
      ? [
          '  bus other : supply on ThickPair {',
          '    from psu2 : PowerBox',
          '    9 ft to board9 : Board',
          '    colours + red - black',
          '  }',
        ]
      : []),
    '}',
  ].join('\n')}\n`;
}

/** The statements of a sound supply. */
export const soundSupply: readonly string[] = ['40 ft to board1 : Board', '25 ft to board2 : Board'];

/** What every page about power says at the end of how to mend it. */
export const withCare =
  'Switch off and lock out first, and prove dead; local code and the maker come first, and the work is for qualified people.';
