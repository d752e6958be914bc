/** Numbers with units: from the tree to SI values, with a report where a unit is missing, unknown or out of place. */
import { type Dimension, formatSignificant, inSi, toSi, units, unitsOf } from '@fieldpair/shared';
import type { Quantity, Unit } from '../generated/reader.js';
import type { Notes } from './notes.js';
import { didYouMean, writeFixes } from './suggest.js';
import { likelyUnits, unitMeant } from './unit-names.js';

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
 * units that are usual here, the likeliest first; unset, all of the dimension. A rate alone may go without a unit:
 * bits per second.
 */
export function quantityOf(
  quantity: Quantity | undefined,
  dimension: Dimension,
  notes: Notes,
  bounds: Bounds = anywhere,
  expected?: readonly string[],
): number | undefined {
  if (!quantity) return undefined;
  if (quantity.feet !== undefined) return feetAndInches(quantity, dimension, notes);
  if (quantity.value === undefined) return undefined;
  const number = quantity.negative ? -quantity.value : quantity.value;
  if (!quantity.unit) {
    if (dimension === 'rate') return within(number, bounds, quantity, dimension, notes);
    reportMissingUnit(quantity, number, dimension, notes, bounds, expected);
    return undefined;
  }
  const unit = units.get(unitName(quantity.unit));
  if (unit?.dimension === dimension) return within(inSi(number, unit), bounds, quantity, dimension, notes);
  reportUnsuitedUnit(quantity.unit, number, unit?.dimension, dimension, notes, bounds, expected);
  const meant = unit ? undefined : unitMeant(unitName(quantity.unit), dimension);
  return meant && possibleUnits(number, [meant], bounds, dimension).length ? toSi(number, meant) : undefined;
}

const anywhere: Bounds = {};

function reportMissingUnit(
  quantity: Quantity,
  number: number,
  dimension: Dimension,
  notes: Notes,
  bounds: Bounds,
  expected: readonly string[] = unitsOf(dimension),
): void {
  const place = notes.place(quantity);
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
}

/** @param actual what the unit measures; undefined where there is no such unit. */
function reportUnsuitedUnit(
  unit: Unit,
  number: number,
  actual: Dimension | undefined,
  dimension: Dimension,
  notes: Notes,
  bounds: Bounds,
  expected: readonly string[] = unitsOf(dimension),
): void {
  const name = unitName(unit);
  const place = notes.place(unit);
  const likely = actual === undefined ? likelyUnits(name, dimension) : [];
  const choices = possibleUnits(number, likely.length ? likely : expected.slice(0, 4), bounds, dimension);
  const what = actual === undefined ? `${name} is no unit` : `${name} measures ${anArticle(actual)} ${actual}`;
  const message = `${what}; here ${anArticle(dimension)} ${dimension} is due, in ${expected.slice(0, 4).join(', ')}${didYouMean(likely)}`;
  notes.report('unit-unsuited', message, place, { fixes: () => writeFixes(place, choices) });
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

const unitName = ({ text = '', per }: Unit): string => (per === undefined ? text : `${text}/${per}`);

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
  const most = mostOf(bounds, dimension);
  const { above, from } = bounds;
  const isTooLow = (above !== undefined && value <= above) || (from !== undefined && value < from);
  if (!isTooLow && value <= most && Number.isFinite(value)) return value;
  notes.report(
    'value-impossible',
    `${notes.textAt(quantity)} ${isTooLow ? whyTooLow(value, bounds, dimension) : `is more than any ${dimension} here can be; check the number and its unit`}`,
    notes.place(quantity),
  );
  return undefined;
}

function whyTooLow(value: number, { above }: Bounds, dimension: Dimension): string {
  const what = `${anArticle(dimension)} ${dimension} here`;
  if (above !== undefined) return `is ${value < 0 ? 'negative' : 'nothing'}; ${what} is more than 0`;
  return value < 0 ? `is negative; ${what} is 0 or more` : `is too small for ${what}`;
}
