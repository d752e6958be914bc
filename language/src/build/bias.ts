/** What a bus says of its bias. */
import { type BusBias, type BusKind, isWrongPort, type Port } from '@fieldpair/shared';
import type { BusStatement } from '../generated/reader.js';
import type { LandingDraft } from './landing-draft.js';
import type { Landings } from './landings.js';
import type { Notes } from './notes.js';
import { biasOf } from './port.js';

/** Inside the 450 to 650 ohm of Modbus (MODBUS over Serial Line V1.02, 3.4.6); holds 200 mV with a full load. */
const usualResistors = '510 ohm';

/** Kinds whose idle line is held by resistors. */
const biasedKinds: ReadonlySet<BusKind> = new Set<BusKind>(['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485']);

/** A bias as it is wired; undefined where it cannot be understood, which is told. */
export function readBias(
  statement: Extract<BusStatement, { type: 'BusBias' }>,
  kind: BusKind | undefined,
  landings: Landings,
  notes: Notes,
): BusBias | undefined {
  const place = notes.place(statement);
  const landing = landings.find(statement.at, 'nothing can bias the pair there');
  if (!landing) return undefined;
  if (statement.switched) {
    const bias = landing.port?.bias;
    if (bias?.mode === 'switch') {
      const { mode: _, ...values } = bias;
      return { landing: landing.index, ...values, place, builtIn: true };
    }
    if (landing.port && kind !== undefined && isWrongPort(landing.port, landing.node, kind)) return undefined;
    if (landing.port && kind !== undefined && !biasedKinds.has(kind)) {
      notes.report(
        'bias-switch-missing',
        `${landing.name} has no bias that could be switched on, and a ${kind} bus takes none: remove this line`,
        place,
        { at: landing.name },
      );
    } else if (landing.port) {
      notes.report(
        'bias-switch-missing',
        `${landing.name} has no bias that could be switched on; write resistors, such as bias at ${landing.name} ${usualResistors}`,
        place,
        {
          at: landing.name,
          fixes: () => [
            {
              title: `Write resistors of ${usualResistors} instead`,
              safe: false,
              edits: [
                { kind: 'write', place, text: `${notes.textAt(statement).replace(/switch$/, '')}${usualResistors}` },
              ],
            },
          ],
        },
      );
    }
    return undefined;
  }
  const values = biasOf(statement.resistors, notes);
  return values && { landing: landing.index, ...values, place, builtIn: false };
}

/** The bias that a landing's port has, and that cannot be switched off. */
export function fixedBias(landing: LandingDraft, { mode: _, ...values }: NonNullable<Port['bias']>): BusBias {
  return { landing: landing.index, ...values, place: landing.place, builtIn: true };
}
