/**
 * Physical quantities.
 *
 * Inside the engine every number is in SI units and carries its unit in its type, so that a length cannot be
 * passed where a resistance is due. Text is converted once when it is read ({@link quantityOf}) and once when it
 * is shown ({@link formatLength} and its like).
 */
declare const unit: unique symbol;
type Branded<Name extends string> = number & { readonly [unit]: Name };

export type Metres = Branded<'m'>;
export type Ohms = Branded<'ohm'>;
export type OhmsPerMetre = Branded<'ohm/m'>;
export type Farads = Branded<'F'>;
export type FaradsPerMetre = Branded<'F/m'>;
export type Volts = Branded<'V'>;
export type Amperes = Branded<'A'>;
export type Watts = Branded<'W'>;
export type Seconds = Branded<'s'>;
export type Celsius = Branded<'degC'>;
export type SquareMetres = Branded<'m2'>;
export type BitsPerSecond = Branded<'bit/s'>;
/** A pure number from 0 up, such as a velocity factor (0.66 for 66 %). */
export type Ratio = Branded<'1'>;

export const metres = (value: number) => value as Metres;
export const ohms = (value: number) => value as Ohms;
export const ohmsPerMetre = (value: number) => value as OhmsPerMetre;
export const farads = (value: number) => value as Farads;
export const faradsPerMetre = (value: number) => value as FaradsPerMetre;
export const volts = (value: number) => value as Volts;
export const amperes = (value: number) => value as Amperes;
export const watts = (value: number) => value as Watts;
export const seconds = (value: number) => value as Seconds;
export const celsius = (value: number) => value as Celsius;
export const squareMetres = (value: number) => value as SquareMetres;
export const bitsPerSecond = (value: number) => value as BitsPerSecond;
export const ratio = (value: number) => value as Ratio;

/** What a quantity measures; each dimension has one SI unit in which the engine computes. */
export type Dimension =
  | 'length'
  | 'resistance'
  | 'resistance per length'
  | 'capacitance'
  | 'capacitance per length'
  | 'voltage'
  | 'current'
  | 'power'
  | 'time'
  | 'temperature'
  | 'area'
  | 'rate'
  | 'gauge'
  | 'ratio';

interface UnitDefinition {
  readonly dimension: Dimension;
  /** SI value of one of this unit. */
  readonly scale: number;
  /** SI value of zero of this unit; only temperatures have one. */
  readonly offset?: number;
}

/** One international foot and inch in metres, exact by the 1959 agreement (NIST SP 811, B.6). */
export const metresPerFoot = 0.3048;
export const metresPerInch = 0.0254;

/** Every unit that may be written in a `.pair` file. The gauge is a number of its own, not convertible. */
export const units: ReadonlyMap<string, UnitDefinition> = new Map<string, UnitDefinition>([
  ['ft', { dimension: 'length', scale: metresPerFoot }],
  ['in', { dimension: 'length', scale: metresPerInch }],
  ['m', { dimension: 'length', scale: 1 }],
  ['cm', { dimension: 'length', scale: 0.01 }],
  ['mm', { dimension: 'length', scale: 0.001 }],
  ['km', { dimension: 'length', scale: 1000 }],
  ['yd', { dimension: 'length', scale: 0.9144 }],
  ['ohm', { dimension: 'resistance', scale: 1 }],
  ['kohm', { dimension: 'resistance', scale: 1000 }],
  ['Mohm', { dimension: 'resistance', scale: 1e6 }],
  ['ohm/km', { dimension: 'resistance per length', scale: 1e-3 }],
  ['ohm/m', { dimension: 'resistance per length', scale: 1 }],
  ['ohm/kft', { dimension: 'resistance per length', scale: 1 / 304.8 }],
  ['pF', { dimension: 'capacitance', scale: 1e-12 }],
  ['nF', { dimension: 'capacitance', scale: 1e-9 }],
  ['uF', { dimension: 'capacitance', scale: 1e-6 }],
  ['pF/ft', { dimension: 'capacitance per length', scale: 1e-12 / metresPerFoot }],
  ['pF/m', { dimension: 'capacitance per length', scale: 1e-12 }],
  ['nF/km', { dimension: 'capacitance per length', scale: 1e-12 }],
  ['V', { dimension: 'voltage', scale: 1 }],
  ['mV', { dimension: 'voltage', scale: 1e-3 }],
  ['A', { dimension: 'current', scale: 1 }],
  ['mA', { dimension: 'current', scale: 1e-3 }],
  ['W', { dimension: 'power', scale: 1 }],
  ['mW', { dimension: 'power', scale: 1e-3 }],
  // Apparent power; in-phase currents, which drop the most, make it the same number.
  ['VA', { dimension: 'power', scale: 1 }],
  ['s', { dimension: 'time', scale: 1 }],
  ['ms', { dimension: 'time', scale: 1e-3 }],
  ['us', { dimension: 'time', scale: 1e-6 }],
  ['ns', { dimension: 'time', scale: 1e-9 }],
  ['degC', { dimension: 'temperature', scale: 1 }],
  ['degF', { dimension: 'temperature', scale: 5 / 9, offset: (-32 * 5) / 9 }],
  ['mm2', { dimension: 'area', scale: 1e-6 }],
  ['bit/s', { dimension: 'rate', scale: 1 }],
  ['kbit/s', { dimension: 'rate', scale: 1e3 }],
  ['Mbit/s', { dimension: 'rate', scale: 1e6 }],
  ['AWG', { dimension: 'gauge', scale: 1 }],
  ['%', { dimension: 'ratio', scale: 0.01 }],
]);

/** Units offered where one of a dimension is due, the likeliest first. */
export function unitsOf(dimension: Dimension): string[] {
  return [...units].filter(([, definition]) => definition.dimension === dimension).map(([name]) => name);
}

/** The SI value of `value` written in `unitName`, or undefined for a unit that does not exist. */
export function toSi(value: number, unitName: string): number | undefined {
  const definition = units.get(unitName);
  return definition && inSi(value, definition);
}

/** The SI value of `value` in a unit. */
export const inSi = (value: number, { scale, offset = 0 }: UnitDefinition): number => value * scale + offset;

/** In which unit lengths are shown to a person. */
export type LengthUnit = 'ft' | 'm';

/** By the most decimals, and without a sign where nothing is left of a negative number; making one takes longer than formatting a hundred numbers. */
const formats: Intl.NumberFormat[] = [];

function withDecimals(value: number, most: number): string {
  formats[most] ??= new Intl.NumberFormat('en-US', { maximumFractionDigits: most, signDisplay: 'negative' });
  return formats[most].format(value);
}

/** A number as people write it: thousands grouped, at most `digits` decimals, no trailing zeros. */
export function formatNumber(value: number, digits = 0): string {
  if (!Number.isFinite(value)) return value > 0 ? 'infinitely many' : 'unknown';
  return Math.abs(value) < 1e15 ? withDecimals(value, digits) : value.toExponential(2);
}

/** `significant` figures without an exponent for everyday sizes: 0.0123, 4.57, 1,230. */
export function formatSignificant(value: number, significant = 3): string {
  if (!Number.isFinite(value)) return value > 0 ? 'infinite' : 'unknown';
  if (value === 0) return '0';
  const exponent = Math.floor(Math.log10(Math.abs(value)));
  if (exponent < -4 || 14 < exponent) return value.toExponential(significant - 1);
  const rounded = Number(value.toPrecision(significant));
  return withDecimals(rounded, Math.max(0, significant - 1 - exponent));
}

/** A length in the reader's unit: `4,310 ft`, `38.5 m`. Short ones keep one decimal. */
export function formatLength(length: Metres, lengthUnit: LengthUnit): string {
  const value = lengthUnit === 'ft' ? length / metresPerFoot : length;
  return `${formatNumber(value, Math.abs(value) < 100 ? 1 : 0)} ${lengthUnit}`;
}

/** `61.8 ohm`, `4.7 kohm`, `open` for an infinite one. */
export function formatOhms(value: Ohms, significant = 3): string {
  if (!Number.isFinite(value)) return 'open';
  if (value < 1e4) return `${formatSignificant(value, significant)} ohm`;
  return value < 1e6
    ? `${formatSignificant(value / 1e3, significant)} kohm`
    : `${formatSignificant(value / 1e6, significant)} Mohm`;
}

/** `100 uF`, `4.7 nF`, `40 pF`, as a `.pair` file has it. */
export function formatFarads(value: Farads): string {
  if (value < 0.9995e-9) return `${formatSignificant(value * 1e12)} pF`;
  return value < 0.9995e-6 ? `${formatSignificant(value * 1e9)} nF` : `${formatSignificant(value * 1e6)} uF`;
}

/** As resistors of loops are spoken of and marked: `4.7 kohm` from a kilohm up. */
export function formatResistor(value: Ohms): string {
  return 1e3 <= value && value < 1e4 ? `${formatSignificant(value / 1e3)} kohm` : formatOhms(value);
}

/** `278 mV` below a volt, else `1.52 V`. */
export function formatVolts(value: Volts): string {
  if (Math.abs(value) < 0.9995) return `${formatNumber(value * 1000, 0)} mV`;
  return `${formatSignificant(value)} V`;
}

/** `350 mA` below an ampere, else `1.25 A`. */
export function formatAmperes(value: Amperes): string {
  return isSmall(value) ? `${formatSignificant(value * 1000)} mA` : `${formatSignificant(value)} A`;
}

/** `350 mW` below a watt, else `12.5 W`; of an alternating supply in VA. */
export function formatWatts(value: Watts, unitName: 'W' | 'VA' = 'W'): string {
  return isSmall(value) ? `${formatSignificant(value * 1000)} m${unitName}` : `${formatSignificant(value)} ${unitName}`;
}

/** Nothing at all is told in the whole unit. */
const isSmall = (value: number) => value !== 0 && Math.abs(value) < 0.9995;

/** `19,200 bit/s`; from a hundred thousand up `250 kbit/s` and `1 Mbit/s`, as they are spoken of. */
export function formatRate(value: BitsPerSecond): string {
  if (value < 1e5) return `${formatNumber(value, 1)} bit/s`;
  return value < 1e6 ? `${formatNumber(value / 1e3, 3)} kbit/s` : `${formatNumber(value / 1e6, 3)} Mbit/s`;
}

/** A time with the prefix that keeps it readable: `5.4 us`, `12 ms`. */
export function formatSeconds(value: Seconds): string {
  const size = Math.abs(value);
  if (size < 0.9995e-6) return `${formatSignificant(value * 1e9)} ns`;
  if (size < 0.9995e-3) return `${formatSignificant(value * 1e6)} us`;
  return size < 0.9995 ? `${formatSignificant(value * 1e3)} ms` : `${formatSignificant(value)} s`;
}
