/** Numbers with units: from the tree to SI values, with a report where a unit is missing, unknown or out of place. */
import { type Dimension, formatSignificant, toSi, units, unitsOf } from '@fieldpair/shared';
import type { Quantity } from '../generated/reader.js';
import type { Notes } from './notes.js';
import { didYouMean, nearest, renameFixes } from './suggest.js';

/** What a value may be, in SI units and in words. */
export interface Bounds {
  readonly above?: number;
  readonly from?: number;
  readonly to?: number;
}

/** Beyond these no wiring exists; such numbers are slips, and sums of them would overflow. */
const largest: Partial<Record<Dimension, number>> = { length: 1e6, temperature: 1000 };

const anArticle = (dimension: Dimension) => (/^[aeiou]/.test(dimension) ? 'an' : 'a');

/**
 * The SI value of a quantity of one dimension, or undefined, with a report, where it has none. `expected` lists the
 * units that are usual here, the likeliest first. A rate alone may go without a unit: bits per second.
 */
export function quantityOf(
  quantity: Quantity | undefined,
  dimension: Dimension,
  notes: Notes,
  bounds: Bounds = {},
  expected: readonly string[] = unitsOf(dimension),
): number | undefined {
  if (!quantity) return undefined;
  const place = notes.place(quantity);
  if (quantity.feet !== undefined) return feetAndInches(quantity, dimension, notes);
  if (quantity.value === undefined) return undefined;
  const number = quantity.negative ? -quantity.value : quantity.value;
  let value: number | undefined = number;
  if (quantity.unit) {
    const name = unitName(quantity);
    value = toSi(number, name);
    const actual = units.get(name)?.dimension;
    if (value === undefined || actual !== dimension) {
      const unitPlace = notes.place(quantity.unit);
      const likely = value === undefined ? nearest(name, unitsOf(dimension)) : [];
      const choices = possibleUnits(number, likely.length ? likely : expected.slice(0, 4), bounds, dimension);
      const what =
        value === undefined ? `${name} is no unit` : `${name} measures ${anArticle(actual as Dimension)} ${actual}`;
      const message = `${what}; here ${anArticle(dimension)} ${dimension} is due, in ${expected.slice(0, 4).join(', ')}${didYouMean(likely)}`;
      notes.report('unit-unsuited', message, unitPlace, { fixes: () => renameFixes(unitPlace, choices) });
      return undefined;
    }
  } else if (dimension !== 'rate') {
    const message = `${formatSignificant(number, 6)} has no unit; write ${anArticle(dimension)} ${dimension} with its unit, such as ${expected
      .slice(0, 3)
      .map((unit) => `${formatSignificant(number, 6)} ${unit}`)
      .join(' or ')}`;
    notes.report('unit-missing', message, place, {
      fixes: () =>
        possibleUnits(number, expected.slice(0, 4), bounds, dimension).map((unit) => ({
          title: `Write ${notes.textAt(quantity)} ${unit}`,
          safe: false,
          edits: [{ kind: 'write', place, text: `${notes.textAt(quantity)} ${unit}` }],
        })),
    });
    return undefined;
  }
  return within(value, bounds, quantity, dimension, notes);
}

/** The units with which a number is a value that can be here. */
const possibleUnits = (number: number, names: readonly string[], bounds: Bounds, dimension: Dimension): string[] =>
  names.filter((name) => {
    const value = toSi(number, name) ?? Number.NaN;
    const least =
      bounds.above === undefined ? (bounds.from ?? Number.NEGATIVE_INFINITY) <= value : bounds.above < value;
    return least && value <= mostOf(bounds, dimension);
  });

const mostOf = (bounds: Bounds, dimension: Dimension) => bounds.to ?? largest[dimension] ?? 1e15;

const unitName = ({ unit }: Quantity): string =>
  unit?.per === undefined ? (unit?.text ?? '') : `${unit.text ?? ''}/${unit.per}`;

/** Also used to tell which length unit a text prefers. */
export const writesFeet = (quantity: Quantity | undefined): boolean | undefined => {
  if (!quantity) return undefined;
  if (quantity.feet !== undefined) return true;
  const unit = quantity.unit?.text;
  return unit === undefined ? undefined : unit === 'ft' || unit === 'in' || unit === 'yd';
};

function feetAndInches(quantity: Quantity, dimension: Dimension, notes: Notes): number | undefined {
  const [, feet, inches] = /^(\d+)[ \t]*ft[ \t]+([\d.]+)/.exec(quantity.feet ?? '') ?? [];
  if (dimension !== 'length') {
    notes.report(
      'unit-unsuited',
      `${quantity.feet} is a length; here ${anArticle(dimension)} ${dimension} is due`,
      notes.place(quantity),
    );
    return undefined;
  }
  return within((toSi(Number(feet), 'ft') ?? 0) + (toSi(Number(inches), 'in') ?? 0), {}, quantity, dimension, notes);
}

function within(
  value: number,
  bounds: Bounds,
  quantity: Quantity,
  dimension: Dimension,
  notes: Notes,
): number | undefined {
  const written = notes.textAt(quantity);
  const most = mostOf(bounds, dimension);
  const complain = (why: string) => notes.report('value-impossible', `${written} ${why}`, notes.place(quantity));
  if (bounds.above !== undefined && value <= bounds.above) {
    complain(
      value < 0
        ? `is negative; ${anArticle(dimension)} ${dimension} here is more than 0`
        : `is nothing; ${anArticle(dimension)} ${dimension} here is more than 0`,
    );
  } else if (bounds.from !== undefined && value < bounds.from) {
    complain(
      value < 0
        ? `is negative; ${anArticle(dimension)} ${dimension} here is 0 or more`
        : `is too small for ${anArticle(dimension)} ${dimension} here`,
    );
  } else if (value > most || !Number.isFinite(value)) {
    complain(`is more than any ${dimension} here can be; check the number and its unit`);
  } else return value;
  return undefined;
}
