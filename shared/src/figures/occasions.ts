/**
 * What occurs on few buses and gives rules something to look at. A rule that names its occasions is not asked about a bus
 * that has none of them, which for most rules are most buses.
 */

import { isUnknown } from '../known.js';
import { areAddressesOf } from '../limits/address.js';
import { formatFault } from '../limits/format.js';
import { firstLengthLimit, limitedLength } from '../limits/length.js';
import { leastDriverLoad } from '../limits/level.js';
import { loadLimit, unitLoadLimit } from '../limits/load.js';
import { usualTerminator } from '../limits/terminator.js';
import { type Bus, rs485Kinds } from '../network.js';
import { portServes, takesRate } from '../ports.js';
import type { Ohms } from '../quantity.js';
import type { Outfit } from './census.js';
import { lumpedLoad } from './lumped-load.js';
import type { RunCensus } from './run-census.js';
import type { BusStudy } from './study.js';

/** One bit each, so that sets of them are numbers. */
export const occasion = {
  /** Three or more trunk cables at one landing. */
  branch: 1 << 0,
  /** A run that joins what was joined already. */
  loop: 1 << 1,
  /** A run that ends nowhere. */
  looseRun: 1 << 2,
  /** It is not one chain, so that there may be parts that nothing joins. */
  noChain: 1 << 3,
  tap: 1 << 4,
  noHead: 1 << 5,
  /** Anything but just one terminator at each of two ends. */
  unusualTerminators: 1 << 6,
  /** A switch that is asked for and not there. */
  missingSwitch: 1 << 7,
  crossedPair: 1 << 8,
  /** Plus, minus or both have no colour. */
  noColours: 1 << 9,
  /** A shield that is cut or kept off the device. */
  unusualShield: 1 << 10,
  severalCables: 1 << 11,
  /** No earth of the shield, or more than one. */
  unusualEarths: 1 << 12,
  bias: 1 << 13,
  biasNeeded: 1 << 14,
  /** A port that is not known, not for this kind of bus, or not simply there to be landed on. */
  unusualPort: 1 << 15,
  /** A rate that a port cannot be set to. */
  unusualRate: 1 << 16,
  /** An address that is missing, or that its device or the kind of bus does not have. */
  unusualAddress: 1 << 17,
  /** More than half of what anything allows in length, or Ethernet, where each link has its own. */
  long: 1 << 18,
  /** Unit loads or a load of the driver beyond what RS-485 allows, or unknown. */
  loaded: 1 << 19,
  /** A terminator that is not just the resistor of the one impedance that all cable has. */
  oddTerminator: 1 << 20,
  noRate: 1 << 21,
  /** Characters that the kind of bus does not have. */
  unusualFormat: 1 << 22,
  /** A run of unknown cable. */
  noCable: 1 << 23,
  /** A common that is to be wired, or Ethernet, which wants two pairs and more. */
  common: 1 << 24,
  /** A port whose terminals are told, without one for the shield. */
  noShieldTerminal: 1 << 25,
  /** A statement that may be of another kind of bus. */
  foreignStatement: 1 << 26,
} as const;

/** A set of occasions. */
export type Occasions = number;
export const everyOccasion: Occasions = -1;

export function occasionsOf(study: BusStudy): Occasions {
  const { bus, shape, census, runCensus } = study;
  const { kind, colours, rate, format } = bus;
  let found = 0;
  if (isLong(study)) found |= occasion.long;
  if (isLoaded(study)) found |= occasion.loaded;
  if (!rate) found |= occasion.noRate;
  if (format && formatFault(kind, format.value)) found |= occasion.unusualFormat;
  if (!runCensus.isOnCable) found |= occasion.noCable;
  if (colours?.common !== undefined || kind === 'ethernet') found |= occasion.common;
  if (speaksForeign(study)) found |= occasion.foreignStatement;
  if (shape.branches.length > 0) found |= occasion.branch;
  if (shape.closing.length > 0) found |= occasion.loop;
  if (shape.loose.length > 0) found |= occasion.looseRun;
  if (!shape.ends) found |= occasion.noChain;
  if (shape.taps.length > 0) found |= occasion.tap;
  if (!study.head) found |= occasion.noHead;
  if (colours?.plus === undefined || colours.minus === undefined) found |= occasion.noColours;
  if (runCensus.byCable.size > 1) found |= occasion.severalCables;
  if (bus.earths.length !== 1) found |= occasion.unusualEarths;
  if (bus.biases.length > 0) found |= occasion.bias;
  for (const outfit of census.outfits) found |= occasionsAt(bus, outfit);
  return found | remarks(study);
}

/** What the landings say of which more is said than an address. */
function remarks({ bus, shape, census, runCensus }: BusStudy): Occasions {
  const due = dueEverywhere(bus, runCensus);
  let found = 0;
  for (const { resistance, capacitance } of census.terminators) {
    if (resistance !== due || capacitance !== undefined) found |= occasion.oddTerminator;
  }
  for (const { missingSwitch, crossed, shield } of census.remarked) {
    if (missingSwitch) found |= occasion.missingSwitch;
    if (crossed) found |= occasion.crossedPair;
    if (shield !== 'through') found |= occasion.unusualShield;
  }
  const isUsual =
    census.terminators.length === 2 && shape.ends?.every((end) => bus.landings[end]!.terminations.length === 1);
  return isUsual ? found : found | occasion.unusualTerminators;
}

/** The resistor that is due at every landing of an RS-485 bus, where it is the same. */
function dueEverywhere({ kind, cable: own }: Bus, { byCable, isOnCable }: RunCensus): Ohms | undefined {
  if (kind === undefined || !rs485Kinds.has(kind) || !isOnCable || 1 < byCable.size) return undefined;
  const [cable = own] = byCable.keys();
  return cable?.impedance ?? usualTerminator;
}

/** So much of a length limit leaves nothing to be said. */
const shortShare = 0.5;

function isLong(study: BusStudy): boolean {
  if (study.bus.kind === 'ethernet') return true;
  const limit = firstLengthLimit(study);
  return limit !== undefined && shortShare * limit.value < limitedLength(study);
}

function isLoaded(study: BusStudy): boolean {
  const { unitLoads } = study;
  if (isUnknown(unitLoads) || unitLoadLimit.value < unitLoads) return true;
  const limit = loadLimit(study.bus);
  return (limit !== undefined && limit.value < unitLoads) || lumpedLoad(study) < leastDriverLoad.value;
}

function speaksForeign({ bus: { kind, samplePoint, guide }, runCensus }: BusStudy): boolean {
  return !!(samplePoint || guide) || runCensus.hasCords || kind === 'ethernet' || kind === 'supply';
}

/** What comes with the landings on one port of one device. */
function occasionsAt({ kind, rate }: Bus, { device, port, addresses }: Outfit): Occasions {
  let found = 0;
  if (!port || kind === undefined || port.kind === undefined) found |= occasion.unusualPort;
  else if (port.reserved || port.twinOf || !portServes(port, kind)) found |= occasion.unusualPort;
  if (port?.needsBias) found |= occasion.biasNeeded;
  if (port) {
    const { plus, shield, common } = port.terminals;
    if (plus !== undefined && shield === undefined) found |= occasion.noShieldTerminal;
    if (common !== undefined) found |= occasion.common;
  }
  if (port && rate && !takesRate(port, rate.value)) found |= occasion.unusualRate;
  const setting = port?.address;
  if (
    (setting && (!addresses.complete || addresses.least < setting.low || setting.high < addresses.most)) ||
    !areAddressesOf(kind, addresses, device?.role)
  ) {
    found |= occasion.unusualAddress;
  }
  return found;
}
