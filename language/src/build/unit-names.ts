/** Units as others write them: in full, in capitals, in the plural, by another sign. */
import { type Dimension, unitsOf } from '@fieldpair/shared';
import { meantBy, nearest } from './suggest.js';

/** In lower case; a plural s is left out. */
const otherNames: Readonly<Record<string, string>> = {
  foot: 'ft',
  feet: 'ft',
  inch: 'in',
  inche: 'in',
  yard: 'yd',
  metre: 'm',
  meter: 'm',
  centimetre: 'cm',
  centimeter: 'cm',
  millimetre: 'mm',
  millimeter: 'mm',
  kilometre: 'km',
  kilometer: 'km',
  kiloohm: 'kohm',
  megaohm: 'Mohm',
  megohm: 'Mohm',
  volt: 'V',
  millivolt: 'mV',
  amp: 'A',
  ampere: 'A',
  milliamp: 'mA',
  milliampere: 'mA',
  watt: 'W',
  milliwatt: 'mW',
  second: 's',
  sec: 's',
  millisecond: 'ms',
  msec: 'ms',
  microsecond: 'us',
  usec: 'us',
  nanosecond: 'ns',
  nsec: 'ns',
  picofarad: 'pF',
  nanofarad: 'nF',
  microfarad: 'uF',
  celsiu: 'degC',
  c: 'degC',
  fahrenheit: 'degF',
  f: 'degF',
  percent: '%',
  pct: '%',
  sqmm: 'mm2',
  qmm: 'mm2',
  bp: 'bit/s',
  baud: 'bit/s',
  bd: 'bit/s',
  kbp: 'kbit/s',
  kbaud: 'kbit/s',
  mbp: 'Mbit/s',
};

/** The unit that a name which is none was meant for, where only one can be. */
export const unitMeant = (name: string, dimension: Dimension): string | undefined =>
  otherName(name, dimension) ?? meantBy(name, unitsOf(dimension));

/** The units of a dimension that such a name may have been meant for, the likeliest first. */
export function likelyUnits(name: string, dimension: Dimension): string[] {
  const other = otherName(name, dimension);
  if (other !== undefined) return [other];
  const known = unitsOf(dimension);
  // A prefix alone, as in 19.2 k.
  const prefixed = name.length === 1 ? known.filter((unit) => unit.startsWith(name)) : [];
  return prefixed.length > 0 ? prefixed : nearest(name, known);
}

function otherName(name: string, dimension: Dimension): string | undefined {
  const known = unitsOf(dimension);
  const usual = name.split('/').map(usualName).join('/');
  return known.includes(usual) ? usual : undefined;
}

function usualName(name: string): string {
  const word = name.toLowerCase();
  const singular = 2 < word.length && word.endsWith('s') ? word.slice(0, -1) : word;
  // What is a unit as it is written is left so.
  return otherNames[word] ?? otherNames[singular] ?? (singular === 'ohm' || singular === 'kohm' ? singular : name);
}
