/** What a question about waves comes to once it is known to make sense, or what is missing to answer it. */
import { isUnknown, type Range, type Unknown } from '../known.js';
import { mostLoops } from '../physics/circuit.js';
import { WaveBus } from '../physics/wave/bus-circuit.js';
import { edgesFor, type Signalling, signallingOf } from '../physics/wave/drive.js';
import type { Receiver } from '../physics/wave/eye.js';
import { samplingOf } from '../physics/wave/sampling.js';
import { type Ratio, type Seconds, seconds } from '../quantity.js';
import type { BusStudy } from './study.js';
import type { WaveQuestion, Waves } from './waves.js';

export interface WaveSetting {
  readonly waveBus: WaveBus;
  readonly signalling: Signalling;
  readonly bits: string;
  readonly bitTime: Seconds;
  /** Of the shortest level that is driven: the bit, or half of it. */
  readonly levelTime: Seconds;
  readonly edge: Waves['edge'];
  readonly receiver: Receiver & { readonly samplingAt: Range<Ratio> };
}

/** An idle line, a start bit, both bits alone among the others, and long stretches of each. */
export const defaultPattern = '1101001110001011111000001';

/** The most bits of a pattern. */
const mostBits = 4096;

export function waveSettingOf({ bus, shape, temperature }: BusStudy, question: WaveQuestion): WaveSetting | Unknown {
  const { kind, landings } = bus;
  const { driver, rate = bus.rate?.value, pattern: bits = defaultPattern, faults = [] } = question;
  if (kind === undefined) return { unknown: 'the kind of the bus' };
  const signalling = signallingOf(kind);
  if (!signalling) return { unknown: `the waveforms of ${kind}, which are computed for RS-485 and CAN alone` };
  if (!landings[driver]) return { unknown: `the driver: the bus has no landing number ${driver}` };
  if (rate === undefined || !(0 < rate && rate < Number.POSITIVE_INFINITY)) return { unknown: 'the rate of the bus' };
  if (!/^[01]+$/.test(bits) || mostBits < bits.length) {
    return { unknown: `the bits to drive: a pattern has 1 to ${mostBits} of 0 and 1` };
  }
  if (mostLoops < shape.closing.length) {
    return { unknown: `the waveforms of a bus with ${shape.closing.length} loops, more than ${mostLoops}` };
  }
  for (const fault of faults) {
    const there = 'run' in fault ? bus.runs[fault.run] : landings[fault.landing];
    if (!there) return { unknown: `where the fault '${fault.kind}' is: the bus has no such place` };
  }
  const waveBus = WaveBus.of(bus, temperature, faults, driver);
  if (isUnknown(waveBus)) return waveBus;
  const bitTime = seconds(1 / rate);
  const levelTime = seconds(bitTime / signalling.levelsPerBit);
  const stated = edgeOf(question.edge ?? landings[driver].port?.edge, signalling, levelTime);
  const edge = question.coarse ? coarsened(stated, levelTime) : stated;
  const receiver = { bitTime: levelTime, threshold: signalling.threshold, samplingAt: samplingOf(bus) };
  return { waveBus, signalling, bits, bitTime, levelTime, edge, receiver };
}

/** No transceiver for field wiring is faster, by far; an edge that claims to be is computed as this. */
const fastestComputed = seconds(100e-12);

/** The edge as stated, else what it may be; the fast one is computed with, because it is the one that rings. */
export function edgeOf(stated: Seconds | undefined, signalling: Signalling, levelTime: Seconds): Waves['edge'] {
  if (stated !== undefined && 0 < stated && stated < Number.POSITIVE_INFINITY) {
    const time = seconds(Math.max(fastestComputed, stated));
    return { time, assumed: false, slowest: time };
  }
  const { fast, slow } = edgesFor(signalling, levelTime);
  const time = seconds(Math.max(fastestComputed, fast));
  return { time, assumed: true, slowest: seconds(Math.max(time, slow)) };
}

/** The fastest edge that is computed where only the sampling instants count, as a share of the level. */
const coarseShare = 0.01;

function coarsened(edge: Waves['edge'], levelTime: Seconds): Waves['edge'] {
  const least = coarseShare * levelTime;
  return { ...edge, time: seconds(Math.max(edge.time, least)), slowest: seconds(Math.max(edge.slowest, least)) };
}
