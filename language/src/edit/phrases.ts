/** How facts are written: numbers, references, whole statements. */
import {
  type Bus,
  formatFarads,
  formatSignificant,
  type Landing,
  metresPerFoot,
  type Termination,
  type WiringEdit,
} from '@fieldpair/shared';
import { nameText } from '../build/suggest.js';
import { lineOf, statementAfter } from './lines.js';
import { insert, type TextChange, type TextOf } from './text-change.js';

export const resistorText = (termination: Termination) => `terminate resistor ${partsText(termination)}`;

export const earthText = (landing: Landing, through: Termination | undefined) =>
  `shield earthed at ${referenceOf(landing)}${through ? ` through ${partsText(through)}` : ''}`;

/** `52.3 ohm capacitor 100 uF`. */
const partsText = ({ resistance, capacitance }: Termination) =>
  `${ohmsWritten(resistance)}${capacitance === undefined ? '' : ` capacitor ${formatFarads(capacitance).replace(/,/g, '')}`}`;

/** Resistors of a loop are spoken of in kilohms, those of a bus in ohms. */
const ohmsWritten = (resistance: number) =>
  resistance < 1000 ? `${plainNumber(resistance)} ohm` : `${plainNumber(resistance / 1000)} kohm`;

export function wiringText(wiring: WiringEdit): string {
  if (wiring.kind === 'across') {
    return `across${wiring.through === undefined ? '' : ` through ${ohmsWritten(wiring.through)}`}`;
  }
  const bridge = wiring.bridge === undefined ? '' : ` bridged ${ohmsWritten(wiring.bridge)}`;
  return `breaks ${wiring.conductor === 'plus' ? '+' : '-'}${bridge}`;
}

/** `bias at head 510 ohm`; the supply is said where it is not the usual 5 V. */
export function biasText(at: string, up: number, down: number, supply = 5): string {
  const resistors =
    up === down ? `${plainNumber(up)} ohm` : `${plainNumber(up)} ohm to + ${plainNumber(down)} ohm to -`;
  return `bias at ${at} ${resistors}${supply === 5 ? '' : ` source ${plainNumber(supply)} V`}`;
}

/** Digits that the grammar reads: no grouping. */
export const plainNumber = (value: number): string => formatSignificant(value, 6).replace(/,/g, '');

/** A length in a unit of people, to a tenth. */
export const lengthText = (length: number, unit: 'ft' | 'm'): string =>
  `${Number((unit === 'ft' ? length / metresPerFoot : length).toFixed(1))} ${unit}`;

/** How a later statement names a landing. */
export function referenceOf(landing: Landing): string {
  if (landing.splice !== undefined) return nameText(landing.splice);
  const node = nameText(landing.node?.name ?? landing.name);
  return landing.portPlace && landing.port ? `${node}.${nameText(landing.port.name)}` : node;
}

/** A statement of its own line, last in the bus, indented like the ones before. */
export function newStatement(bus: Bus, text: string, textOf: TextOf): TextChange {
  const { file, start } = bus.endPlace;
  const source = textOf(file) ?? '';
  const last = [...bus.runs.map(({ place }) => place), ...bus.pens.map(({ place }) => place)].at(-1);
  const indent = last ? lineOf(source, last.start).indent : `${lineOf(source, bus.blockPlace.start).indent}  `;
  return insert(file, statementAfter(source, start), `${source.includes('\r\n') ? '\r\n' : '\n'}${indent}${text}`);
}
