/**
 * What a free-topology segment (ISO/IEC 14908 on a transformer-coupled pair at 78 kbit/s) may be: lengths by class of
 * cable, terminators, devices, warmth. All of it is from the makers' data books of its transceivers.
 */
import type { BusStudy } from '../figures/study.js';
import type { Bus, Cable, Landing, Termination } from '../network.js';
import { farads, ohms } from '../quantity.js';
import { gaugeOf, isCategoryCable } from './cable-class.js';
import type { Limit } from './limit.js';

const dataBook = 'Free topology transceiver data book';

/** Limits in metres, one row of the data book's tables. */
export interface SegmentLimits {
  /** How the book calls the cable. */
  readonly cable: string;
  /** Of a bus with a terminator at each end. */
  readonly bus: number;
  /** Of any other shape: from one device to another, and all wire together. */
  readonly apart: number;
  readonly total: number;
}

const fluoropolymer16 = { cable: '16 AWG with fluoropolymer insulation', bus: 2700, apart: 500, total: 500 };
const pvc16 = { cable: '16 AWG with PVC insulation', bus: 2700, apart: 400, total: 500 };
const level4 = { cable: 'level IV, 22 AWG', bus: 1400, apart: 400, total: 500 };
const jysty = { cable: 'J-Y(St)Y 2x2x0.8', bus: 900, apart: 320, total: 500 };
const category = { cable: 'category 5 and 6', bus: 900, apart: 250, total: 450 };

/** Each allows no more than the one before it, in no column. */
const rows: readonly SegmentLimits[] = [fluoropolymer16, pvc16, level4, jysty, category];

/** What no cable of the tables may exceed: holds for a cable of unknown class, too. */
const anyClass: SegmentLimits = { ...fluoropolymer16, cable: 'any cable of the tables' };

/**
 * The row of a cable: by the class that it states, else by what makes the class (four pairs of 23 or 24 AWG at 100 ohm;
 * a stranded pair of 16 AWG, taken as PVC where its insulation is unsaid, which allows less). Undefined where neither
 * tells.
 */
export function segmentRow(cable: Cable): SegmentLimits | undefined {
  switch (cable.class) {
    case 'level-4':
      return level4;
    case 'jysty-08':
      return jysty;
    case undefined:
      break;
    default:
      return category;
  }
  if (isCategoryCable(cable)) return category;
  const gauge = gaugeOf(cable);
  if (gauge === undefined || Math.round(gauge) !== 16 || !cable.pairs || cable.stranding !== 'stranded')
    return undefined;
  return cable.insulation === 'fluoropolymer' ? fluoropolymer16 : pvc16;
}

/** The cables of a segment whose class neither they nor their make tells, by name. */
export const unclassedCables = ({ runs }: Bus): string[] => [
  ...new Set(runs.flatMap(({ cable, spare }) => (!spare && cable && !segmentRow(cable) ? [cable.name] : []))),
];

/** The least that the cables of a segment allow; where a class is unknown, what no class may exceed. */
export function segmentLimits({ runs }: Bus): SegmentLimits {
  let least = -1;
  for (const { cable, spare } of runs) {
    const row = spare || !cable ? undefined : segmentRow(cable);
    if (row) least = Math.max(least, rows.indexOf(row));
  }
  return rows[least] ?? anyClass;
}

/**
 * `bus`: one chain, a terminator of 105 ohm at each end, short stubs, the longest reach. `free`: any shape, one
 * terminator of 52.3 ohm anywhere.
 */
export type SegmentForm = 'bus' | 'free';

/** Between 52.3 and 105 ohm, in ratio: which of the two a resistor was meant to be. */
const halfway = Math.sqrt(52.3 * 105);

/**
 * What the terminators of a segment say that it is meant to be. A chain with two or more of them, one at an end, is a
 * bus, and so is one with a single terminator of a bus's value at an end; everything else is of free form.
 */
export function segmentForm({ census, shape }: BusStudy): SegmentForm {
  const { ends } = shape;
  if (!ends) return 'free';
  // A switch that is asked for and not there was meant to be a terminator, of whatever value.
  const places = census.remarked.filter(({ terminations, missingSwitch }) => terminations.length > 0 || missingSwitch);
  const count = places.reduce((sum, { terminations }) => sum + Math.max(1, terminations.length), 0);
  const atEnd = places.find(({ index }) => ends.includes(index));
  if (!atEnd) return 'free';
  return 1 < count || halfway < (atEnd.terminations[0]?.resistance ?? 0) ? 'bus' : 'free';
}

/** 100 uF: two electrolytic capacitors back to back, which count as one of the two at a time. */
const blocking = farads(100e-6);
export const segmentTerminators: Readonly<Record<SegmentForm, Required<Termination>>> = {
  bus: { resistance: ohms(105), capacitance: blocking },
  free: { resistance: ohms(52.3), capacitance: blocking },
};
/** The book asks for 1 %; twice that still reads as the same resistor of the E96 series. Common practice, no published source. */
export const segmentTerminatorTolerance = 0.02;

/** A shield is led to earth through 470 kohm with 0.1 uF across. */
export const shieldNetwork: Required<Termination> = { resistance: ohms(470e3), capacitance: farads(100e-9) };

export const segmentStub: Limit = {
  value: 3,
  meaning: 'the most for a stub of a doubly terminated bus',
  source: `${dataBook}, doubly terminated bus topology`,
  strength: 'required',
};

export const segmentDevices: Limit = {
  value: 64,
  meaning: 'the most on one free-topology segment',
  source: `${dataBook}: 64 devices per segment`,
  strength: 'required',
};

export const segmentWarmth: Limit = {
  value: 55,
  meaning: 'the most that the wire may have on average',
  source: `${dataBook}: average wire temperature at most 55 degC`,
  strength: 'required',
};

/** From one device to another, or to the terminator; free form alone. */
export function apartLimit(study: BusStudy): Limit | undefined {
  if (segmentForm(study) !== 'free') return undefined;
  const { apart, cable } = segmentLimits(study.bus);
  return {
    value: apart,
    meaning: `the most from one device to another on ${cable}`,
    source: `${dataBook}, free topology specifications`,
    strength: 'required',
  };
}

/** All wire of a segment of free form; the way from end to end of a bus. */
export function segmentLength(study: BusStudy): Limit {
  const { bus, total, cable } = segmentLimits(study.bus);
  return segmentForm(study) === 'bus'
    ? {
        value: bus,
        meaning: `the most for a doubly terminated bus on ${cable}`,
        source: `${dataBook}, doubly terminated bus topology`,
        strength: 'required',
      }
    : {
        value: total,
        meaning: `the most wire for a free-topology segment on ${cable}`,
        source: `${dataBook}, free topology specifications`,
        strength: 'required',
      };
}

/** Whether a way may end at a landing: at a device, or at a splice with the terminator. */
export const endsWay = ({ node, terminations }: Landing): boolean => node !== undefined || terminations.length > 0;

/** Rate of the channel, from memory of ISO/IEC 14908-2. */
export const segmentRate = 78_125;
