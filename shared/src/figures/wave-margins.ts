/**
 * Margins of a bus without more work than they need: where delays and edge are short against the bit, the level at the
 * sampling instant is the settled one, and two sums over the runs replace the simulation.
 */
import { isUnknown, type Known, type Range } from '../known.js';
import type { Landing, LandingIndex } from '../network.js';
import { portConductance } from '../physics/loads.js';
import { conductanceOf } from '../physics/nodal.js';
import { biasTolerance, lowered, raised, supplyTolerance, terminatorTolerance } from '../physics/tolerance.js';
import { settledLevels } from '../physics/wave/bus-waves.js';
import { extremeWaves, nominalWave, usualPortCapacitance } from '../physics/wave/corners.js';
import { signallingOf } from '../physics/wave/drive.js';
import { settledMargin } from '../physics/wave/eye.js';
import { impedanceTolerance } from '../physics/wave/medium.js';
import { samplingOf } from '../physics/wave/sampling.js';
import { edgePerSigma } from '../physics/wave/step-response.js';
import { type Seconds, seconds, type Volts, volts } from '../quantity.js';
import type { BusStudy } from './study.js';
import { edgeOf, waveSettingOf } from './wave-setting.js';
import { wavesOf } from './waves.js';

/** What a level may still lack at the sampling instant, as a share of the swing, where a bus settles easily. */
export const easyShare = 0.04;

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
/**
 * Sigmas of a Gaussian edge from the receiver's threshold until it lacks 2.5 % of its swing: 1.96 from its middle, and
 * the threshold may lie half a sigma beside that.
 */
const sigmasOfEdge = 2.5;

/**
 * The least by which the level at each landing lies beyond the receiver's threshold at the sampling instants; as
 * {@link wavesOf} has it, without a simulation where the bus settles easily.
 */
export function marginsOf(study: BusStudy, driver: LandingIndex): readonly Known<Range<Volts>>[] {
  const kept = made.get(study) ?? new Map<LandingIndex, readonly Known<Range<Volts>>[]>();
  made.set(study, kept);
  const margins = kept.get(driver) ?? computeMargins(study, driver);
  kept.set(driver, margins);
  return margins;
}

/** What was asked before, as long as somebody has the study. */
const made = new WeakMap<BusStudy, Map<LandingIndex, readonly Known<Range<Volts>>[]>>();

function computeMargins(study: BusStudy, driver: LandingIndex): readonly Known<Range<Volts>>[] {
  if (!settlesEasily(study, driver)) {
    const waves = wavesOf(study, { driver, pattern: '0', samples: 4 });
    return isUnknown(waves) ? study.bus.landings.map(() => waves) : waves.landings.map(({ margin }) => margin);
  }
  const setting = waveSettingOf(study, { driver });
  if (isUnknown(setting)) return study.bus.landings.map(() => setting);
  const { waveBus, signalling, edge } = setting;
  const corners = [nominalWave(edge.time), ...extremeWaves([edge.time], signalling.driven)].map(
    ({ corner, driver: grade }) => settledLevels(waveBus, corner, signalling.drivers[grade], signalling.driven),
  );
  return study.bus.landings.map(({ index }) => {
    const upright = waveBus.signs[index] === waveBus.signs[driver];
    const margins = corners.map((levels) => settledMargin(levels[index]!, upright, signalling.threshold));
    return {
      nominal: volts(margins[0]!),
      low: volts(Math.min(...margins)),
      high: volts(Math.max(...margins)),
    };
  });
}

/**
 * Whether delays and edge are so short against the bit that at the sampling instants every level lacks less than
 * {@link easyShare} of its swing, so that the margin follows from levels without a simulation. It is quick and sound:
 * false wherever it is not sure.
 */
export function settlesEasily(study: BusStudy, driver: LandingIndex): boolean {
  const landing = study.bus.landings[driver];
  return landing !== undefined && allSettleEasily(study, [landing]);
}

function allSettleEasily(study: BusStudy, drivers: readonly Landing[]): boolean {
  const { bus } = study;
  const rate = bus.rate?.value;
  const signalling = signallingOf(bus.kind);
  if (!signalling || rate === undefined || !(0 < rate)) return false;
  const levelTime = seconds(1 / rate / signalling.levelsPerBit);
  const { low, high } = samplingOf(bus);
  let slowest = 0;
  for (const { port, splice } of drivers) {
    if (splice === undefined) slowest = Math.max(slowest, edgeOf(port?.edge, signalling, levelTime).slowest);
  }
  const edge = (slowest * sigmasOfEdge) / edgePerSigma;
  // The next bit's edge must not have begun either.
  if ((1 - high) * levelTime < edge) return false;
  const unrest = timeOfUnrest(study);
  return unrest !== undefined && unrest + edge <= low * levelTime;
}

/**
 * A margin that no landing falls below, whichever device drives, by sums over runs and landings alone: as if all that
 * loads the pair hung at its far end. Undefined where the bus does not settle easily or a value is missing. A rule that
 * finds enough here need not ask for margins one by one.
 */
export function marginFloor(study: BusStudy): Volts | undefined {
  const { bus } = study;
  const signalling = signallingOf(bus.kind);
  if (!signalling || !allSettleEasily(study, bus.landings)) return undefined;
  let resistance = 0;
  for (const run of bus.runs) {
    const wire = run.spare ? undefined : study.runResistance(run);
    if (wire && !isUnknown(wire)) resistance += 2 * wire.high;
  }
  let conductance = 0;
  let biasAmperes = 0;
  for (const landing of bus.landings) {
    const load = portConductance(bus.kind, landing);
    if (load === undefined || landing.crossed !== undefined) return undefined;
    conductance += load.across + load.toCommon / 2;
    for (const terminator of landing.terminations) {
      conductance += conductanceOf(lowered(terminator.resistance, terminatorTolerance));
    }
  }
  for (const { up, down, supply } of bus.biases) {
    conductance += conductanceOf(lowered(up + down, biasTolerance));
    biasAmperes += raised(supply, supplyTolerance) / lowered(up + down, biasTolerance);
  }
  const { open, output } = signalling.drivers.least;
  const level = open / (1 + output * conductance) / (1 + resistance * conductance);
  const offset = biasAmperes * (output + resistance);
  const { high, low } = signalling.threshold;
  if (signalling.driven === 'dominant bit')
    return volts(Math.min(level * (1 - easyShare) - high, low - easyShare * level));
  return volts(level * (1 - 2 * easyShare) - offset - high);
}

/** A bound for how long waves run about after an edge has arrived; undefined for a bus that is no plain chain. */
function timeOfUnrest(study: BusStudy): Seconds | undefined {
  const { bus, shape } = study;
  if (!shape.ends || 0 < shape.loose.length || 0 < shape.closing.length) return undefined;
  let trunk = 0;
  let taps = 0;
  let resistance = 0;
  let impedance: number | undefined;
  for (const run of bus.runs) {
    if (run.spare) continue;
    const delay = study.runDelay(run);
    const wire = study.runResistance(run);
    if (isUnknown(delay) || isUnknown(wire) || run.cable?.impedance === undefined) return undefined;
    impedance ??= run.cable.impedance;
    if (run.cable.impedance !== impedance) return undefined;
    if (run.tap || shape.onTap.has(run.from)) taps += delay;
    else trunk += delay;
    resistance += 2 * wire.high;
  }
  if (impedance === undefined) return undefined;
  let mismatch = 1;
  let ports = 0;
  for (const { index, terminations, port, splice } of bus.landings) {
    const isEnd = shape.ends.includes(index);
    if (terminations.length !== (isEnd ? 1 : 0)) return undefined;
    if (splice === undefined) ports += port?.capacitance ?? usualPortCapacitance;
    for (const { resistance: terminator, capacitance } of terminations) {
      const share = terminator / impedance;
      if (capacitance !== undefined || share < fittingTerminator.least || fittingTerminator.most < share) {
        return undefined;
      }
      mismatch = Math.max(mismatch, share, 1 / share);
    }
  }
  const worst = (mismatch * (1 + terminatorTolerance)) / (1 - impedanceTolerance);
  const thrownBack = (thrownBackByDriver * (worst - 1)) / (worst + 1);
  const rounds = Math.log(diedAway) / Math.log(thrownBack);
  const capacitance = (trunk + taps) / impedance;
  return seconds(
    2 * rounds * trunk +
      waysAlongTap * taps +
      timeConstants * (impedance / 2) * ports +
      resistance * (capacitance + ports),
  );
}
