/** Cells in a few words. */
import { formatNumber, type LengthUnit, type Metres, metresPerFoot, metresPerInch } from '../quantity.js';
import type { Cell, Column } from './packet.js';

const present = (lines: readonly (string | undefined)[]): string[] =>
  lines.filter((line): line is string => line !== undefined && line !== '');

export const text = (...lines: readonly (string | undefined)[]): Cell => ({ kind: 'text', lines: present(lines) });

/** The first line stands out. */
export const named = (...lines: readonly (string | undefined)[]): Cell => ({
  kind: 'text',
  lines: present(lines),
  strong: true,
});

export const tick: Cell = { kind: 'tick' };
export const blank: Cell = { kind: 'blank' };
export const empty: Cell = text();
export const nothing: Cell = { kind: 'none' };

/** A reading with so many decimals, so that one column's are of one kind. */
export const reading = (value: number, digits: number): Cell => ({
  kind: 'number',
  value: Number(value.toFixed(digits)),
  text: fixed(value, digits),
});

/** As `toLocaleString` would, which takes longer than all else about a cell. */
const fixed = (value: number, digits: number) =>
  value.toFixed(digits).replace(/\B(?=(?:\d{3})+(?!\d))(?<!\.\d*)/g, ',');

/** A number of the column's unit with at most so many decimals. */
export const number = (value: number, digits = 0): Cell => ({
  kind: 'number',
  value: Number(value.toFixed(digits)),
  text: formatNumber(value, digits),
});

/** The units that lengths are shown in: one, or one beside the other. */
export type LengthUnits = readonly [LengthUnit, ...LengthUnit[]];

/** A column of lengths for each unit. */
export const lengthColumns = (head: string, units: LengthUnits, merged = false): Column[] =>
  units.map((unit) => ({ head, unit, unitInText: true, width: unit === 'ft' ? 11 : 8, ...(merged && { merged }) }));

/** A length in each unit. */
export const lengthCells = (length: Metres, units: LengthUnits): Cell[] =>
  units.map((unit) => ({
    kind: 'number',
    value: Number((unit === 'ft' ? length / metresPerFoot : length).toFixed(2)),
    text: tapeLength(length, unit),
  }));

/** A length as a tape measure shows it: `12 ft`, `14 ft 6 in`, `3.5 m`; to the nearest inch, centimetre, or from 10 m on decimetre. */
export function tapeLength(length: Metres, unit: LengthUnit): string {
  if (unit === 'm') return `${formatNumber(length, length < 10 ? 2 : 1)} m`;
  const inches = Math.round(length / metresPerInch);
  const feet = Math.floor(inches / 12);
  return inches % 12 === 0 ? `${formatNumber(feet)} ft` : `${formatNumber(feet)} ft ${inches % 12} in`;
}

/** Lengths in a sentence: `12 ft`, `12 ft (3.66 m)`. */
export function lengthsText(length: Metres, [first, ...others]: LengthUnits): string {
  const more = others.map((unit) => ` (${tapeLength(length, unit)})`).join('');
  return `${tapeLength(length, first)}${more}`;
}
