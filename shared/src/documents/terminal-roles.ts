/** Which terminals a bus lands on. */
import { type Bus, type Landing, rs485Kinds } from '../network.js';

export type TerminalRole = keyof Required<NonNullable<Landing['port']>['terminals']>;

/** Top to bottom as people land them. */
const inOrder: readonly TerminalRole[] = ['plus', 'minus', 'common', 'shield'];

/**
 * The terminals that a port has; where the catalogue names none, those that its kind of bus must have. Ethernet lands
 * by a plug and has none.
 */
export function terminalRoles({ kind, runs, colours }: Bus, { port, splice }: Landing): TerminalRole[] {
  if (kind === 'ethernet') return [];
  const declared = inOrder.filter((role) => port?.terminals[role] !== undefined);
  if (0 < declared.length) return declared;
  const shielded = runs.some(({ cable }) => cable?.shield !== undefined && cable.shield !== 'none');
  const joined = splice !== undefined && colours?.common !== undefined;
  return inOrder.filter((role) => (role === 'common' ? joined : role !== 'shield' || shielded));
}

/** Whether the two wires are told apart by plus and minus. */
export const hasPolarity = ({ kind }: Bus): boolean =>
  kind !== undefined && (rs485Kinds.has(kind) || kind === 'can' || kind === 'supply');
