/** Which conductor of which cable goes under which terminal of a landing. */
import type { Bus, Cable, Landing, Port, Run } from '../network.js';
import { type TerminalRole, terminalRoles } from './terminal-roles.js';

/** One screw of a landing. */
export interface TerminalRow {
  readonly role: TerminalRole;
  /** What is printed beside it, and what it is: `D+ (plus)`. */
  readonly terminal: string;
  /** Per cable, in the order that was asked for: the conductor that lands here. */
  readonly conductors: readonly string[];
}

/** The terminals of a landing with the conductors of some runs. */
export function terminalRows(bus: Bus, landing: Landing, runs: readonly Run[]): TerminalRow[] {
  return terminalRoles(bus, landing).map((role) => ({
    role,
    terminal: terminalText(bus, landing.port, role),
    conductors: runs.map((run) => conductorText(bus, run.cable, crossedRole(landing, role))),
  }));
}

const words: Readonly<Record<TerminalRole, string>> = {
  plus: 'plus',
  minus: 'minus',
  shield: 'shield',
  common: 'common',
};

function terminalText(bus: Bus, port: Port | undefined, role: TerminalRole): string {
  const word = bus.kind === 'can' && (role === 'plus' || role === 'minus') ? canWords[role] : words[role];
  const mark = port?.terminals[role];
  return mark === undefined ? word : `${mark} (${word})`;
}

/** The wires of CAN as ISO 11898-2 calls them. */
const canWords = { plus: 'CAN_H', minus: 'CAN_L' } as const;

/** Where the pair is swapped, each wire is under the other's terminal. */
function crossedRole({ crossed }: Landing, role: TerminalRole): TerminalRole {
  if (crossed === undefined) return role;
  return role === 'plus' ? 'minus' : role === 'minus' ? 'plus' : role;
}

/** The colour of a conductor; where the bus states none, or one that the cable does not have, that is said. */
function conductorText({ colours }: Bus, cable: Cable | undefined, role: TerminalRole): string {
  if (role === 'shield') {
    if (cable?.shield === 'none') return 'no shield';
    return colours?.shield ?? (cable?.drain ? 'drain' : 'shield');
  }
  const colour = colours?.[role];
  if (colour === undefined) return 'not stated';
  const known = cable?.colours ?? [];
  return known.length === 0 || known.includes(colour) ? colour : `no ${colour} in it (${known.join(', ')})`;
}
