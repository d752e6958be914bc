/** The stores that the pages of this folder show: small and sound but for what a page is about. */
import { block, rs485Port, shieldedPair, textOf } from '../example-parts.js';

interface Variation {
  /** Unit load of every board; undefined leaves it unsaid, on the head too. */
  readonly load?: string | undefined;
  readonly rate?: string;
  /** Of every board's port. */
  readonly capacitance?: string;
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
  const capacitance = variation.capacitance === undefined ? [] : [`capacitance ${variation.capacitance}`];
  const load = 'load' in variation ? variation.load : '1/8';
  const port = (name: string, ...lines: readonly string[]) =>
    rs485Port(name, [...(load === undefined ? [] : [`load ${load}`]), 'terminator switch 120 ohm', ...lines]);
  const pulled = runs.map((length, index) => `${length} to n${index + 1} : Board address ${index + 1}`);
  const bus = block(`bus cases : modbus-rtu ${rate} 8E1 on Pair22`, [
    'from head terminate switch',
    ...pulled.with(-1, `${pulled.at(-1)} terminate switch`),
    ...['shield earthed at head', 'colours + white - blue'],
    ...more,
  ]);
  return textOf(
    shieldedPair('Pair22', ['velocity 66 %']),
    block('device Panel', ['role head', ...port('field')]),
    block('device Board', port('field', 'address dial 1..247', ...capacitance, ...(needsBias ? ['bias needed'] : []))),
    repeater ? block('device Repeater', ['role repeater', ...port('left'), ...port('right')]) : [],
    block('store northgate', ['node head : Panel', ...bus]),
  );
}

/** So many devices, the head among them. */
export const crowd = (devices: number): string[] => Array.from({ length: devices - 1 }, () => '10 ft');
