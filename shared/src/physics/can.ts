/** Times and levels of CAN: how much of a bit the way there and back takes, and how far a conductor carries. */

import { longestWay } from '../figures/longest-way.js';
import type { BusStudy } from '../figures/study.js';
import { isUnknown, type Known } from '../known.js';
import { canLevels, canTerminators } from '../limits/can.js';
import type { Bus, Landing } from '../network.js';
import {
  type BitsPerSecond,
  type Metres,
  metres,
  type Ohms,
  ohms,
  type Ratio,
  ratio,
  type Seconds,
  seconds,
} from '../quantity.js';
import { lowered, terminatorTolerance } from './tolerance.js';

/**
 * What a bit takes from a controller through its transceiver to the pair and back, where the catalogue does not say:
 * the most that transceivers take (Microchip DS70005340A, equations 5 to 9). Isolators come on top.
 */
export const usualLoopDelay = seconds(255e-9);

/** As near to it as the quanta of a bit allow (CiA, bit timing table). */
export const usualSamplePoint = ratio(0.875);

export const samplePointOf = ({ samplePoint }: Bus): Ratio => samplePoint?.value ?? usualSamplePoint;
export const loopDelayOf = ({ port }: Landing): Seconds => port?.delay ?? usualLoopDelay;

/** The pair of devices between which a bit takes longest there and back. */
export interface Propagation {
  readonly from: Landing;
  readonly to: Landing;
  /** There and back, both transceivers passed twice. */
  readonly time: Seconds;
  /** What is left of the bit up to its sample point; negative when the answer comes after it. */
  readonly slack: Seconds;
}

/**
 * All nodes answer within a bit, so that the way there and back must end before the sample point:
 * t = 2 (t loop + t bus), with the two devices' own loop delays where they differ (Microchip DS70005340A, eq. 5 to 9).
 * Undefined where no two devices are joined.
 */
export function propagation(study: BusStudy): Known<Propagation | undefined> {
  const { bus, shape, bitTime } = study;
  if (isUnknown(bitTime)) return bitTime;
  const delays: number[] = [];
  for (const run of bus.runs) {
    const delay = run.spare || run.length === 0 ? seconds(0) : study.runDelay(run);
    if (isUnknown(delay)) return delay;
    delays.push(2 * delay);
  }
  const way = longestWay(bus, shape, {
    run: ({ index }) => delays[index]!,
    end: (index) => (bus.landings[index]!.node ? loopDelayOf(bus.landings[index]!) : undefined),
  });
  if (isUnknown(way) || !way) return way;
  return {
    from: bus.landings[way.from]!,
    to: bus.landings[way.to]!,
    time: seconds(way.length),
    slack: seconds(samplePointOf(bus) * bitTime - way.length),
  };
}

/** Whether the slowest answer comes before the sample at a rate, as far as the delays are known. */
export function answersAt(study: BusStudy, rate: BitsPerSecond): boolean {
  const found = propagation(study);
  return isUnknown(found) || !found || found.time <= samplePointOf(study.bus) / rate;
}

/** How long a line of one velocity may be for a rate and one loop delay, by the same formula. */
export const longestByPropagation = (bitTime: Seconds, loop: Seconds, samplePoint: Ratio, perMetre: number): Metres =>
  metres((samplePoint * bitTime) / 2 / perMetre - loop / perMetre);

export interface CanWire {
  /** Ohm per metre of one conductor. */
  readonly resistance: number;
  /** The smaller terminator at its least. */
  readonly terminator: Ohms;
  /** The least that one node resists between the wires. */
  readonly input: Ohms;
  readonly nodes: number;
}

/**
 * The longest line on which the farthest receiver still gets its threshold and a margin (AN96116, equation 11).
 */
export function longestByResistance({ resistance, terminator, input, nodes }: CanWire): Metres {
  const { leastDrive, mostThreshold, margin } = canLevels;
  const share = leastDrive / (mostThreshold + margin * (leastDrive - mostThreshold)) - 1;
  const far = (terminator * input) / (input + Math.max(0, nodes - 1) * terminator);
  return metres((share * far) / (2 * resistance));
}

/** What a node resists between the wires: as the catalogue has it, else the least that a node may. */
export const inputOf = ({ port }: Landing): Ohms => port?.resistance ?? canLevels.leastInput;

/** What an end of a line is terminated with; the usual resistor where it has none, so that it can be judged all the same. */
export function endResistance({ terminations }: Landing): Ohms {
  let conductance = 0;
  for (const { resistance, capacitance } of terminations) if (capacitance === undefined) conductance += 1 / resistance;
  return conductance === 0 ? canTerminators.nominal : ohms(1 / conductance);
}

/** Equation 11 for a line as it is, with the usual terminators where it has none. */
export function wireReach(study: BusStudy): Known<Metres> {
  const { bus, loopResistance, shape } = study;
  if (isUnknown(loopResistance)) return loopResistance;
  const trunk = study.trunkLength;
  if (!shape.ends || trunk === 0) return { unknown: 'the two ends of the bus: it is no single chain' };
  const terminators = shape.ends.map((end) => endResistance(bus.landings[end]!));
  const devices = bus.landings.filter(({ node }) => node);
  return longestByResistance({
    resistance: loopResistance.high / 2 / trunk,
    terminator: ohms(lowered(Math.min(...terminators), terminatorTolerance)),
    input: ohms(devices.reduce((least, landing) => Math.min(least, inputOf(landing)), Number.POSITIVE_INFINITY)),
    nodes: devices.length,
  });
}
