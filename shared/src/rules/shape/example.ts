/** Whole `.pair` files for the pages of the rules about shape and ends: one catalogue, one bus. */
import type { BusKind } from '../../network.js';
import { block, rs485Port, shieldedPair, textOf } from '../example-parts.js';

const port = (...more: readonly string[]) => rs485Port('field', ['load 1/8', ...more, 'edge 250 ns']);

const catalogue: readonly string[] = [
  ...shieldedPair('ShieldedPair22', ['capacitance 12.5 pF/ft', 'velocity 66 %']),
  ...block('device SiteHead', ['role head', ...port('terminator switch 120 ohm')]),
  ...block('device CaseBoard', port('terminator switch 120 ohm', 'address dial 1..99')),
  ...block('device AirProbe', port('address dial 1..99')),
];

/** A file with one bus named `cases` that holds the given statements, one a line. */
export function exampleOf(statements: readonly string[], kind: BusKind = 'modbus-rtu'): string {
  const rate = kind === 'modbus-rtu' ? ' 19200 8E1' : '';
  const bus = block(`bus cases "Display cases" : ${kind}${rate} on ShieldedPair22`, [
    ...statements,
    'shield earthed at head',
    'bias at head 560 ohm',
  ]);
  return textOf(catalogue, block('store market "Demo market"', bus));
}
