/**
 * What occurs on few buses and gives rules something to look at. A rule that names its occasions is not asked about a bus
 * that has none of them, which for most rules are most buses.
 */
import { areAddressesOf } from '../limits/address.js';
import type { Bus } from '../network.js';
import { portServes, takesRate } from '../ports.js';
import type { Outfit } from './census.js';
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
} as const;

/** A set of occasions. */
export type Occasions = number;
export const everyOccasion: Occasions = -1;

export function occasionsOf(study: BusStudy): Occasions {
  const { bus, shape, census } = study;
  const { colours } = bus;
  let found = 0;
  if (shape.branches.length > 0) found |= occasion.branch;
  if (shape.closing.length > 0) found |= occasion.loop;
  if (shape.loose.length > 0) found |= occasion.looseRun;
  if (!shape.ends) found |= occasion.noChain;
  if (shape.taps.length > 0) found |= occasion.tap;
  if (!study.head) found |= occasion.noHead;
  if (colours?.plus === undefined || colours.minus === undefined) found |= occasion.noColours;
  if (study.runsByCable.size > 1) found |= occasion.severalCables;
  if (bus.earths.length !== 1) found |= occasion.unusualEarths;
  if (bus.biases.length > 0) found |= occasion.bias;
  for (const outfit of census.outfits) found |= occasionsAt(bus, outfit);
  return found | remarks(study);
}

/** What the landings say of which more is said than an address. */
function remarks({ bus, shape, census }: BusStudy): Occasions {
  let found = 0;
  let terminators = 0;
  for (const { terminations, missingSwitch, crossed, shield } of census.remarked) {
    terminators += terminations.length;
    if (missingSwitch) found |= occasion.missingSwitch;
    if (crossed) found |= occasion.crossedPair;
    if (shield !== 'through') found |= occasion.unusualShield;
  }
  const isUsual = terminators === 2 && shape.ends?.every((end) => bus.landings[end]!.terminations.length === 1);
  return isUsual ? found : found | occasion.unusualTerminators;
}

/** What comes with the landings on one port of one device. */
function occasionsAt({ kind, rate }: Bus, { device, port, addresses }: Outfit): Occasions {
  let found = 0;
  if (!port || kind === undefined || port.kind === undefined) found |= occasion.unusualPort;
  else if (port.reserved || port.twinOf || !portServes(port, kind)) found |= occasion.unusualPort;
  if (port?.needsBias) found |= occasion.biasNeeded;
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
