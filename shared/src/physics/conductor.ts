/**
 * What one conductor of a cable resists.
 *
 * Sources: NBS Handbook 100 (1966) s. 2.1 and ASTM B258 for the wire gauge; the International Annealed Copper
 * Standard (IEC 60028) for copper at 20 degC; IEC 60228 tables 1 to 3 for what coating adds; ASTM B8 class B, from
 * memory, for what stranding adds.
 */
import { isUnknown, type Known, type Range } from '../known.js';
import type { Cable } from '../network.js';
import {
  type Celsius,
  celsius,
  type Metres,
  metres,
  type OhmsPerMetre,
  ohmsPerMetre,
  type SquareMetres,
} from '../quantity.js';
import { cableTolerance } from './tolerance.js';

/** Resistivity of annealed copper of 100 % IACS at 20 degC in ohm metre: 1/58 ohm mm2/m (IEC 60028). */
export const copperResistivity = 1e-6 / 58;

/** Rise of copper's resistance per kelvin, referred to 20 degC (NBS Handbook 100, constant mass). */
export const copperTemperatureCoefficient = 0.00393;

/** The temperature that cable resistances are stated at. */
export const referenceTemperature = celsius(20);

/** Strands run about 2 % further than the cable for their lay: ASTM B8 class B, from memory. */
export const strandingFactor = 1.02;

/** Coated strands resist about 2 % more; IEC 60228 tables 1 to 3 allow 0.6 to 2.8 %. */
export const coatingFactor = 1.02;

/**
 * Hook-up strandings hold up to 10 % more copper than their gauge number says (7 x 32 AWG for 24 AWG: 448 against
 * 404 circular mil), so that a stranded conductor may resist a tenth less than a solid one, and a little for rounding: makers' wire tables.
 */
export const leastStrandedFactor = 0.89;

/** The highest gauge number that is a conductor here: 50 AWG is 25 um thin, finer than any field cable. */
const finestGauge = 50;

/** Diameter of a solid conductor by its gauge number, 0000 being -3: 0.127 mm * 92^((36 - n)/39). */
export function gaugeDiameter(gauge: number): Metres {
  return metres(0.127e-3 * 92 ** ((36 - gauge) / 39));
}

/** Cross-section of a solid conductor of a gauge. */
export function gaugeArea(gauge: number): SquareMetres {
  return ((Math.PI / 4) * gaugeDiameter(gauge) ** 2) as SquareMetres;
}

/** The gauge whose solid conductor has a cross-section; not a whole number in general. */
export function gaugeOfArea(area: SquareMetres): number {
  const diameter = Math.sqrt((4 / Math.PI) * area);
  return 36 - (39 * Math.log(diameter / 0.127e-3)) / Math.log(92);
}

/** By what copper's resistance at a temperature is that at 20 degC. */
export function temperatureFactor(temperature: Celsius): number {
  return 1 + copperTemperatureCoefficient * (temperature - referenceTemperature);
}

/** Resistance of a solid copper conductor of an area. */
export function solidResistance(area: SquareMetres, temperature: Celsius): OhmsPerMetre {
  return ohmsPerMetre((copperResistivity / area) * temperatureFactor(temperature));
}

/** The conductor's cross-section, as written or by its gauge; undefined when neither is there or it is none. */
export function conductorArea(cable: Cable): SquareMetres | undefined {
  if (cable.area !== undefined) return 0 < cable.area ? cable.area : undefined;
  if (cable.gauge === undefined || cable.gauge < -3 || finestGauge < cable.gauge) return undefined;
  return gaugeArea(cable.gauge);
}

/**
 * Resistance per metre of one conductor at a temperature. What the cable states wins; else it follows from the gauge
 * or area, wider for stranded conductors, whose copper content is not what their number says.
 */
export function cableResistance(cable: Cable, temperature: Celsius): Known<Range<OhmsPerMetre>> {
  const warmth = temperatureFactor(temperature);
  if (!(0 < warmth)) return { unknown: `the resistance of copper at ${temperature} degC` };
  if (cable.resistance !== undefined) return around(cable.resistance * warmth, cableTolerance);
  const area = conductorArea(cable);
  if (area === undefined) return { unknown: `the conductor of cable ${cable.name}` };
  const solid = solidResistance(area, temperature);
  if (cable.stranding !== 'stranded') return around(solid, cableTolerance);
  const nominal = solid * strandingFactor * (cable.tinned ? coatingFactor : 1);
  // An area that was measured is the copper that is there; only a gauge number leaves it open.
  const least = cable.area === undefined ? solid * leastStrandedFactor : nominal * (1 - cableTolerance);
  const most = nominal * (cable.tinned === undefined ? coatingFactor : 1) * (1 + cableTolerance);
  return { nominal: ohmsPerMetre(nominal), low: ohmsPerMetre(least), high: ohmsPerMetre(most) };
}

function around(nominal: number, tolerance: number): Range<OhmsPerMetre> {
  return {
    nominal: ohmsPerMetre(nominal),
    low: ohmsPerMetre(nominal * (1 - tolerance)),
    high: ohmsPerMetre(nominal * (1 + tolerance)),
  };
}

/** A length of cable's conductor, from its resistance per metre. */
export function resistanceOfLength<T extends number>(
  perMetre: Known<Range<OhmsPerMetre>>,
  length: Metres,
): Known<Range<T>> {
  if (isUnknown(perMetre)) return perMetre;
  return {
    nominal: (perMetre.nominal * length) as T,
    low: (perMetre.low * length) as T,
    high: (perMetre.high * length) as T,
  };
}
