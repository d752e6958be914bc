/**
 * Margins of a bus without more work than they need: where delays and edge are short against the bit, the level at the
 * sampling instant is the settled one, and two sums over the runs replace the simulation.
 */
import { isUnknown, type Known, type Range } from '../known.js';
import type { Landing, LandingIndex } from '../network.js';
import { settledLevels } from '../physics/wave/bus-waves.js';
import { extremeWaves, nominalWave } from '../physics/wave/corners.js';
import { signallingOf } from '../physics/wave/drive.js';
import { settledMargin } from '../physics/wave/eye.js';
import { samplingOf } from '../physics/wave/sampling.js';
import { edgePerSigma } from '../physics/wave/step-response.js';
import { seconds, type Volts, volts } from '../quantity.js';
import { type EasyBus, easyBus } from './easy-bus.js';
import type { BusStudy } from './study.js';
import { edgeOf, waveSettingOf } from './wave-setting.js';
import { wavesOf } from './waves.js';

/** What a level may still lack at the sampling instant, as a share of the swing, where a bus settles easily. */
export const easyShare = 0.04;

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

export const notReached = { unknown: 'the level: no cable leads there from the driver' };

/** Many times what any transceiver drives; to simulate more would keep people waiting for minutes. */
const mostSimulated = 1000;

function computeMargins(study: BusStudy, driver: LandingIndex): readonly Known<Range<Volts>>[] {
  if (!settlesEasily(study, driver)) {
    const { landings } = study.bus;
    if (mostSimulated < landings.length) {
      const unknown = `the margin of a bus with ${landings.length} landings, more than ${mostSimulated}`;
      return landings.map(() => ({ unknown }));
    }
    const waves = wavesOf(study, { driver, pattern: '0', samples: 4, coarse: true });
    if (isUnknown(waves)) return study.bus.landings.map(() => waves);
    return waves.landings.map(({ margin, cutOff }) => (cutOff ? notReached : margin));
  }
  const setting = waveSettingOf(study, { driver });
  if (isUnknown(setting)) return study.bus.landings.map(() => setting);
  const { waveBus, signalling, edge } = setting;
  const corners = [nominalWave(edge.time), ...extremeWaves([edge.time], signalling.driven)].map(
    ({ corner, driver: grade }) => settledLevels(waveBus, corner, signalling.drivers[grade], signalling.driven),
  );
  return study.bus.landings.map(({ index }) => {
    if (waveBus.nodes[index] === -1) return notReached;
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
  return landing !== undefined && easyWith(study, () => edgesAt(landing)) !== undefined;
}

const edgesAt = ({ port }: Landing): EasyBus['edges'] => ({
  slowest: port?.edge ?? 0,
  unstated: port?.edge === undefined,
});

/** The sums of a bus that settles easily when these of its edges drive; else undefined. */
function easyWith(study: BusStudy, edgesOf: (easy: EasyBus) => EasyBus['edges']): EasyBus | undefined {
  const { bus } = study;
  const rate = bus.rate?.value;
  const signalling = signallingOf(bus.kind);
  if (!signalling || rate === undefined || !(0 < rate)) return undefined;
  const easy = easyBus(study);
  if (!easy) return undefined;
  const levelTime = seconds(1 / rate / signalling.levelsPerBit);
  const { slowest, unstated } = edgesOf(easy);
  const stated = 0 < slowest ? edgeOf(seconds(slowest), signalling, levelTime).slowest : 0;
  const assumed = unstated ? edgeOf(undefined, signalling, levelTime).slowest : 0;
  const edge = (Math.max(stated, assumed) * sigmasOfEdge) / edgePerSigma;
  const { low, high } = samplingOf(bus);
  // The next bit's edge must not have begun either.
  return edge <= (1 - high) * levelTime && easy.unrest + edge <= low * levelTime ? easy : undefined;
}

const edgesOfAll = ({ edges }: EasyBus) => edges;

/**
 * A margin that no landing falls below, whichever device drives, by sums over runs and landings alone: as if all that
 * loads the pair hung at its far end. Undefined where the bus does not settle easily or a value is missing. A rule that
 * finds enough here need not ask for margins one by one.
 */
export function marginFloor(study: BusStudy): Volts | undefined {
  const { bus } = study;
  const signalling = signallingOf(bus.kind);
  const easy = easyWith(study, edgesOfAll);
  if (!signalling || easy?.conductance === undefined) return undefined;
  const { conductance, resistance, biasAmperes } = easy;
  const { open, output } = signalling.drivers.least;
  const level = open / (1 + output * conductance) / (1 + resistance * conductance);
  const offset = biasAmperes * (output + resistance);
  const { high, low } = signalling.threshold;
  if (signalling.driven === 'dominant bit')
    return volts(Math.min(level * (1 - easyShare) - high, low - easyShare * level));
  return volts(level * (1 - 2 * easyShare) - offset - high);
}
