/** Short texts that a user gives beside the files: names of landings, and quantities with their units. */
import { type Bus, type Dimension, formatNumber, type Landing, listed, toSi, units, unitsOf } from '@fieldpair/shared';
import { didYouMean, nameText, nearest } from '../build/suggest.js';

/** Why something that was asked for cannot be had, as one line without its full stop. */
export class Refusal {
  constructor(readonly reason: string) {}
}

/** The words of a phrase; a name in double quotes is one word, with or without what the quotes stand before. */
export function wordsOf(phrase: string): string[] {
  const found = phrase.match(/(?:"(?:[^"\\]|\\.)*"|[^\s"])+/g) ?? [];
  return found.map((word) =>
    word.replace(/"((?:[^"\\]|\\.)*)"/g, (_, inside: string) => inside.replace(/\\(.)/g, '$1')),
  );
}

/** A landing's name as a word of a phrase. */
export const landingText = ({ name }: Landing): string =>
  /^[\w.[\]-]+$/.test(name) ? name : `"${name.replace(/["\\]/g, '\\$&')}"`;

/** The landing that a name means: as the text calls it, or by its node alone where that is landed once. */
export function landingNamed(bus: Bus, name: string): Landing | Refusal {
  const exact = bus.landings.find((landing) => landing.name === name);
  if (exact) return exact;
  const ofNode = bus.landings.filter(({ node }) => node?.name === name);
  if (ofNode.length === 1) return ofNode[0]!;
  const names = (ofNode.length ? ofNode : bus.landings).map((landing) => landing.name);
  if (ofNode.length) return new Refusal(`bus ${bus.name} lands on ${name} more than once: at ${listed(names)}`);
  const meant = nearest(name, names);
  const hint = meant.length ? didYouMean(meant) : `; it has ${listed(names) || 'none'}`;
  return new Refusal(`bus ${bus.name} has no landing ${nameText(name)}${hint}`);
}

export interface Limits {
  readonly least: number;
  readonly most: number;
}

/** A quantity such as `300 ns` or `12 ft 6 in` from words, in SI units; a number alone is in `bare` where that is given. */
export function quantityFrom(
  text: string,
  dimension: Dimension,
  { least, most }: Limits,
  bare?: string,
): number | Refusal {
  const what = `${dimension} "${text}"`;
  const parts = [
    ...text.trim().matchAll(/([-+]?(?:\d[\d,]*\.?\d*|\.\d+)(?:e[-+]?\d+)?)\s*([A-Za-z%][^\s\d]*(?:\d(?=\s|$))?)?\s*/gi),
  ];
  const whole = parts.map(([part]) => part).join('');
  if (!parts.length || whole.length !== text.trim().length)
    return new Refusal(`${what} is no number with a unit, such as ${example(dimension)}`);
  let sum = 0;
  for (const [, digits, unit = bare] of parts) {
    if (unit === undefined)
      return new Refusal(`${what} lacks its unit, such as ${unitsOf(dimension).slice(0, 3).join(' or ')}`);
    const value = Number(digits!.replaceAll(',', ''));
    const si = units.get(unit)?.dimension === dimension ? toSi(value, unit) : undefined;
    if (si === undefined)
      return new Refusal(`${what}: ${unit} is no unit of ${dimension}; there are ${unitsOf(dimension).join(', ')}`);
    sum += si;
  }
  if (Number.isFinite(sum) && least <= sum && sum <= most) return sum;
  return new Refusal(`${what} is out of reach: from ${siText(least, dimension)} to ${siText(most, dimension)}`);
}

const examples: Partial<Record<Dimension, string>> = {
  time: '300 ns',
  rate: '19200 bit/s',
  resistance: '120 ohm',
  length: '38 ft',
  ratio: '40 %',
};
const example = (dimension: Dimension) => examples[dimension] ?? `1 ${unitsOf(dimension)[0]}`;

function siText(value: number, dimension: Dimension): string {
  const fitting = [...units].filter(([, unit]) => unit.dimension === dimension && unit.offset === undefined);
  const readable = fitting
    .map(([name, { scale }]) => ({ name, number: value / scale }))
    .sort((left, right) => Math.abs(Math.log10(left.number || 1) - 1) - Math.abs(Math.log10(right.number || 1) - 1));
  return readable[0] ? `${formatNumber(readable[0].number, 3)} ${readable[0].name}` : String(value);
}
