/** How long a bus may be, and how fast for its length. */
import type { BusStudy } from '../figures/study.js';
import { type BusKind, rs485Kinds } from '../network.js';
import { type BitsPerSecond, formatRate, type Metres, metresPerFoot } from '../quantity.js';
import { gaugeOf, isCategoryCable } from './cable-class.js';
import { segmentForm, segmentLength } from './free-topology.js';
import type { Limit } from './limit.js';

/** 4,000 ft; the same guidance is printed as 1,200 m, which is 20 m less. */
const rs485Length: Limit = {
  value: 4000 * metresPerFoot,
  meaning: 'the most that an RS-485 bus should run, by guidance',
  source: 'TIA/EIA-422-B annex A.1.1 (informative), as quoted for TIA-485-A: 1200 m (4000 ft) up to 90 kbit/s',
  strength: 'guidance',
};

/** Written for 9600 bit/s and less with AWG 26 or thicker; for 19200 the guide gives no number. */
const modbusTrunk: Limit = {
  value: 1000,
  meaning: 'the most that a Modbus trunk may run at up to 9600 bit/s',
  source: 'MODBUS over Serial Line V1.02, 3.4.3',
  strength: 'required',
};

const modbusCategoryCable: Limit = {
  value: 600,
  meaning: 'the most that Modbus may run on category cable',
  source: 'MODBUS over Serial Line V1.02, 3.6: category 5 cable may be used up to 600 m',
  strength: 'guidance',
};

const mstpSegment: Limit = {
  value: 4000 * metresPerFoot,
  meaning: 'the most that an MS/TP segment should run',
  source: 'ASHRAE 135-2004 clause 9.2 (as quoted publicly): 1200 m (4000 ft) recommended with 18 AWG',
  strength: 'guidance',
};

/**
 * The length limit of a whole bus; undefined for kinds that have none (on Ethernet each run is a link of its own) and on
 * CAN without a rate, which sets it there.
 */
export function lengthLimit(study: BusStudy): Limit | undefined {
  const { bus } = study;
  switch (bus.kind) {
    case 'modbus-rtu': {
      for (const cable of study.runsByCable.keys()) if (isCategoryCable(cable)) return modbusCategoryCable;
      if (!bus.rate || 9600 < bus.rate.value) return rs485Length;
      const thick = bus.runs.every(({ cable }) => (gaugeOf(cable) ?? Number.POSITIVE_INFINITY) <= 26);
      return thick ? modbusTrunk : rs485Length;
    }
    case 'bacnet-mstp':
      return mstpSegment;
    case 'rs485':
    case 'peer-485':
      return rs485Length;
    case 'free-topology':
      return segmentLength(study);
    case 'can': {
      const value = bus.rate && study.canGuide.length(bus.rate.value);
      if (!bus.rate || value === undefined) return undefined;
      const meaning = `the most that a CAN bus should run at ${formatRate(bus.rate.value)}`;
      return { value, meaning, source: study.canGuide.source, strength: 'guidance' };
    }
    default:
      return undefined;
  }
}

/**
 * What the limit is for: all cable, but the way from end to end of a CAN line or of a doubly terminated free-topology
 * bus, whose stubs have limits of their own.
 */
export function limitedLength(study: BusStudy): Metres {
  const { bus, shape } = study;
  const endToEnd =
    bus.kind === 'can' ? shape.ends !== undefined : bus.kind === 'free-topology' && segmentForm(study) === 'bus';
  return endToEnd ? study.trunkLength : study.length;
}

/** Whether a CAN line is no longer than its guide allows at a rate. */
export const isWithinGuide = (study: BusStudy, rate: BitsPerSecond): boolean =>
  limitedLength(study) <= (study.canGuide.length(rate) ?? 0);

/** Length times rate, in metres times bits per second. */
const lengthTimesRate = 1e8;
/** Below this the copper's resistance limits the length, not the rate. */
const slowRate = 90_000;

/** How long an RS-485 bus should be at a rate; undefined where the rate is too slow to limit it, and for other kinds. */
export function lengthForRate(kind: BusKind | undefined, rate: BitsPerSecond): Limit | undefined {
  if (kind === undefined || !rs485Kinds.has(kind) || rate <= slowRate) return undefined;
  return {
    value: lengthTimesRate / rate,
    meaning: `what guidance gives at ${formatRate(rate)}`,
    source: 'TIA/EIA-422-B annex A.1.1 (informative): the length falls tenfold per decade above 90 kbit/s',
    strength: 'guidance',
  };
}

/** The first limit that a bus meets when it grows, at the rate that it has. */
export function firstLengthLimit(study: BusStudy): Limit | undefined {
  const { kind, rate } = study.bus;
  const ofKind = lengthLimit(study);
  const ofRate = rate && lengthForRate(kind, rate.value);
  return ofKind && ofRate ? (ofRate.value < ofKind.value ? ofRate : ofKind) : (ofKind ?? ofRate);
}
