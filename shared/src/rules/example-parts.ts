/** Blocks of text from which the examples on the pages of RS-485 rules are put together. */

/** A block as lines: its head, and what it holds, indented. */
export const block = (head: string, lines: readonly string[]): string[] => [
  `${head} {`,
  ...lines.map((line) => `  ${line}`),
  '}',
];

/** A whole file, or a part of one. */
export const textOf = (...blocks: readonly (readonly string[])[]): string => `${blocks.flat().join('\n')}\n`;

/** A shielded pair of 22 AWG and 120 ohm, which suits every RS-485 bus. */
export const shieldedPair = (name: string, more: readonly string[] = []): string[] =>
  block(`cable ${name}`, [
    ...['conductor 22 AWG stranded', 'twisted pairs 1', 'shield foil drain', 'impedance 120 ohm'],
    ...more,
  ]);

export const rs485Port = (name: string, more: readonly string[]): string[] =>
  block(`port ${name} : rs485`, ['terminals + "D+" - "D-" shield "SH"', ...more]);
