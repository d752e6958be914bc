/** The stores that the pages of this folder show: one alarm loop, sound but for what a page is about. */

/** An input of three supervised contacts. */
const supervised = [
  'expects resistor 4.7 kohm',
  'at most 3 contacts',
  'at most 100 ohm of cable',
  'reads fault below 2.5 kohm',
  'reads normal above 3.6 kohm below 6.2 kohm',
  'reads alarm above 7.5 kohm below 21 kohm',
  'reads fault above 30 kohm',
];

interface Variation {
  /** What the input states, one a line. */
  readonly input?: readonly string[];
  /** Where the cable starts. */
  readonly from?: string;
}

/** A file with one loop that holds the given statements, one a line. */
export function loopExample(statements: readonly string[], variation: Variation = {}): string {
  const { input = supervised, from = 'panel' } = variation;
  return `${[
    'cable AlarmPair18 {',
    '  conductor 18 AWG solid',
    '  untwisted',
    '  shield none',
    '  colours red, black',
    '}',
    'device Panel {',
    '  port loop : contact-loop {',
    '    terminals + "L" - "COM"',
    ...input.map((line) => `    ${line}`),
    '  }',
    '}',
    'device CallButton {',
    '  port contact : contact-loop {',
    '    terminals + "1" - "2"',
    '    normally closed',
    '  }',
    '}',
    'device Float {',
    '  port contact : contact-loop {',
    '    terminals + "1" - "2"',
    '    normally open',
    '  }',
    '}',
    'store northgate {',
    '  bus alarms : contact-loop on AlarmPair18 {',
    `    from ${from}${from === 'panel' ? ' : Panel' : ''}`,
    ...statements.map((statement) => `    ${statement}`),
    '    colours + red - black',
    '  }',
    '}',
  ].join('\n')}\n`;
}

/** The statements of a sound loop, which the example's input reads rightly in all its states. */
export const soundLoop: readonly string[] = [
  '60 ft to call1 : CallButton breaks + bridged 4.7 kohm',
  '25 ft to call2 : CallButton breaks + bridged 4.7 kohm terminate resistor 4.7 kohm',
];

/** An input of which only the resistor is stated. */
export const resistorOnly = ['expects resistor 4.7 kohm'];
