/**
 * What a bus comes to by sums over its runs and landings alone, in one pass, for whoever wants to know without a
 * simulation whether it settles easily and what is left of the level.
 */
import { isUnknown } from '../known.js';
import type { Cable, LandingIndex } from '../network.js';
import { cableResistance } from '../physics/conductor.js';
import { cableVelocity, speedOfLight } from '../physics/delay.js';
import { portConductance, unitLoadResistance } from '../physics/loads.js';
import { conductanceOf } from '../physics/nodal.js';
import { biasTolerance, lowered, raised, supplyTolerance, terminatorTolerance } from '../physics/tolerance.js';
import { usualPortCapacitance } from '../physics/wave/corners.js';
import { impedanceTolerance } from '../physics/wave/medium.js';
import { type Celsius, type Seconds, seconds } from '../quantity.js';
import type { BusStudy } from './study.js';

/** Terminators from this to that share of the cable's impedance count as fitting. */
const fittingTerminator = { least: 0.75, most: 1.35 };
/** Share of a wave that a driver of low output resistance throws back: 10.8 ohm across 60 ohm and less. */
const thrownBackByDriver = 0.85;
/** What is left of a wave when it has died away for this purpose. */
const diedAway = 0.01;
/** A tap of open end empties itself through the trunk by a third each time: this many ways along it, and some more. */
const waysAlongTap = 10;
/** Five time constants leave less than 1 %. */
const timeConstants = 5;

/** The runs of a bus, one after the other. */
interface RunSums {
  /** Of all cables. */
  readonly impedance: number;
  /** Seconds along the trunk, and along all that hangs on taps. */
  readonly trunk: number;
  readonly taps: number;
  /** Ohms of both wires of every run, at the most. */
  readonly resistance: number;
}

/** The landings of a bus, all at one point. */
interface LandingSums {
  /** Farads of all ports, at the most. */
  readonly ports: number;
  /** The worst ratio of a terminator to the cable's impedance, at least 1. */
  readonly mismatch: number;
  /** Siemens of the terminators, at the most. */
  readonly terminators: number;
  readonly isCrossed: boolean;
  readonly edges: EasyBus['edges'];
}

export interface EasyBus {
  /** A bound for how long waves run about after an edge has arrived. */
  readonly unrest: Seconds;
  readonly resistance: number;
  /** Siemens across the pair, at the most; undefined where a device states no load, or is crossed. */
  readonly conductance: number | undefined;
  /** Amperes that bias puts into the pair, at the most. */
  readonly biasAmperes: number;
  /** The slowest edge that a port states, 0 for none, and whether some port states none. */
  readonly edges: { readonly slowest: number; readonly unstated: boolean };
}

/** Undefined for a bus that is no plain chain of cables of one impedance, with a terminator that fits at each end. */
export function easyBus(study: BusStudy): EasyBus | undefined {
  const { bus, shape } = study;
  if (!shape.ends || 0 < shape.loose.length || 0 < shape.closing.length) return undefined;
  const runs = sumRuns(study);
  const landings = runs && sumLandings(study, shape.ends, runs.impedance);
  if (!landings) return undefined;
  let conductance = landings.isCrossed ? undefined : loadsOf(study);
  let biasAmperes = 0;
  if (conductance !== undefined) conductance += landings.terminators;
  for (const { up, down, supply } of bus.biases) {
    if (conductance !== undefined) conductance += conductanceOf(lowered(up + down, biasTolerance));
    biasAmperes += raised(supply, supplyTolerance) / lowered(up + down, biasTolerance);
  }
  const { impedance, trunk, taps, resistance } = runs;
  const { mismatch, ports, edges } = landings;
  const worst = (mismatch * (1 + terminatorTolerance)) / (1 - impedanceTolerance);
  const thrownBack = (thrownBackByDriver * (worst - 1)) / (worst + 1);
  const rounds = Math.log(diedAway) / Math.log(thrownBack);
  const capacitance = (trunk + taps) / impedance;
  const unrest =
    2 * rounds * trunk +
    waysAlongTap * taps +
    timeConstants * (impedance / 2) * ports +
    resistance * (capacitance + ports);
  return { unrest: seconds(unrest), resistance, conductance, biasAmperes, edges };
}

/** What a metre of a cable comes to. */
interface PerMetre {
  readonly temperature: number;
  readonly delay: number;
  /** Of both wires, at the most. */
  readonly ohms: number;
}
const perMetres = new WeakMap<Cable, PerMetre>();

/** Kept by cable: stores without number have the same few. */
function perMetreOf(cable: Cable, temperature: Celsius): PerMetre | undefined {
  const known = perMetres.get(cable);
  if (known?.temperature === temperature) return known;
  const velocity = cableVelocity(cable);
  const wire = cableResistance(cable, temperature);
  if (isUnknown(velocity) || isUnknown(wire)) return undefined;
  const made = { temperature, delay: 1 / (velocity * speedOfLight), ohms: 2 * wire.high };
  perMetres.set(cable, made);
  return made;
}

function sumRuns({ bus, shape, temperature, runsByCable, length }: BusStudy): RunSums | undefined {
  const hasTaps = 0 < shape.taps.length;
  let trunk = 0;
  let taps = 0;
  let resistance = 0;
  let known = 0;
  let impedance: number | undefined;
  for (const [cable, runs] of runsByCable) {
    const perMetre = perMetreOf(cable, temperature);
    impedance ??= cable.impedance;
    if (!impedance || cable.impedance !== impedance || !perMetre) return undefined;
    let whole: number = length;
    let onTaps = 0;
    if (runs.length < bus.runs.length) {
      whole = 0;
      for (const run of runs) whole += run.length;
    }
    if (hasTaps) for (const run of runs) if (run.tap || shape.onTap.has(run.from)) onTaps += run.length;
    trunk += (whole - onTaps) * perMetre.delay;
    taps += onTaps * perMetre.delay;
    resistance += perMetre.ohms * whole;
    known += whole;
  }
  // Runs of unknown cable are in no list.
  if (impedance === undefined || known < length * (1 - 1e-9)) return undefined;
  return { impedance, trunk, taps, resistance };
}

/** By the kinds of ports that there are, and the few landings of which more is said. */
function sumLandings(
  { bus, census }: BusStudy,
  ends: readonly LandingIndex[],
  impedance: number,
): LandingSums | undefined {
  // One more than at the ends is between them.
  if (2 < census.terminators.length) return undefined;
  for (const end of ends) if (bus.landings[end]!.terminations.length !== 1) return undefined;
  // Not by lists that are taken apart: a check comes here for every bus, and mostly before V8 has optimised it.
  let ports = 0;
  let slowest = 0;
  let unstated = false;
  for (const { isSplice, port, landings } of census.outfits) {
    if (isSplice) continue;
    ports += landings.length * (port?.capacitance ?? usualPortCapacitance);
    if (port?.edge === undefined) unstated = true;
    else slowest = Math.max(slowest, port.edge);
  }
  let mismatch = 1;
  let terminators = 0;
  for (const { resistance, capacitance } of census.terminators) {
    const share = resistance / impedance;
    if (capacitance !== undefined || share < fittingTerminator.least || fittingTerminator.most < share)
      return undefined;
    mismatch = Math.max(mismatch, share, 1 / share);
    terminators += conductanceOf(lowered(resistance, terminatorTolerance));
  }
  let isCrossed = false;
  for (const { crossed } of census.remarked) if (crossed !== undefined) isCrossed = true;
  return { ports, mismatch, terminators, isCrossed, edges: { slowest, unstated } };
}

/** Siemens of all ports; undefined where one states no load. */
function loadsOf({ bus, unitLoads }: BusStudy): number | undefined {
  if (bus.kind !== 'can') return isUnknown(unitLoads) ? undefined : unitLoads / (2 * unitLoadResistance);
  let sum = 0;
  for (const landing of bus.landings) sum += portConductance('can', landing)?.across ?? 0;
  return sum;
}
