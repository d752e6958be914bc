/** Which conductor of which cable goes under which terminal of a landing. */
import type { Bus, Cable, Landing, Port, Run } from '../network.js';
import { type TerminalRole, terminalRoles } from './terminal-roles.js';

/** One screw of a landing. */
export interface TerminalRow {
  /** What is printed beside it, and what it is: `D+ (plus)`. */
  readonly terminal: string;
  /** Per cable, in the order that was asked for: the conductor that lands here. */
  readonly into: readonly string[];
  readonly out: readonly string[];
}

/** The terminals of a landing with the conductors of the runs that arrive and of those that leave. */
export function terminalRows(bus: Bus, landing: Landing, into: readonly Run[], out: readonly Run[]): TerminalRow[] {
  if (landing.wiring?.kind === 'breaks') return brokenRows(bus, landing, landing.wiring.conductor, into, out);
  return terminalRoles(bus, landing).map((role) => {
    const wire = (run: Run) => conductorText(bus, run.cable, crossedRole(landing, role));
    return { terminal: terminalText(bus, landing.port, role), into: into.map(wire), out: out.map(wire) };
  });
}

/** A contact in one conductor: its two ends are on the contact, and the other conductor passes by. */
function brokenRows(
  bus: Bus,
  { port }: Landing,
  cut: 'plus' | 'minus',
  into: readonly Run[],
  out: readonly Run[],
): TerminalRow[] {
  const other = cut === 'plus' ? 'minus' : 'plus';
  const wire = (role: TerminalRole) => (run: Run) => `${role}: ${conductorText(bus, run.cable, role)}`;
  return [
    { terminal: port?.terminals.plus ?? 'contact, one side', into: into.map(wire(cut)), out: [] },
    { terminal: port?.terminals.minus ?? 'contact, other side', into: [], out: out.map(wire(cut)) },
    { terminal: 'joined, off the device', into: into.map(wire(other)), out: out.map(wire(other)) },
  ];
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

/** Of a conductor whose colour nobody has laid down. */
const unstated = 'not stated';

/** The colour of a conductor; where the bus states none, or one that the cable does not have, that is said. */
function conductorText({ colours }: Bus, cable: Cable | undefined, role: TerminalRole): string {
  if (role === 'shield') {
    if (cable?.shield === 'none') return 'no shield';
    return colours?.shield ?? (cable?.drain ? 'drain' : 'shield');
  }
  const colour = colours?.[role];
  if (colour === undefined) return unstated;
  const known = cable?.colours ?? [];
  return known.length === 0 || known.includes(colour) ? colour : `no ${colour} in it (${known.join(', ')})`;
}
