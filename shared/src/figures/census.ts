/**
 * What occurs on a bus, told once. Nearly all landings of a bus are alike, with nothing said of them beside their
 * address: a rule that looks at each kind of port, and at the few landings that are out of the ordinary, is soon done with
 * a sound bus.
 */
import type { Bus, Device, Landing, LandingTermination, Port } from '../network.js';

/** The landings on one port of one device of the catalogue. */
export interface Outfit {
  readonly isSplice: boolean;
  /** Absent where none is known. */
  readonly device: Device | undefined;
  /** Absent where none is known. */
  readonly port: Port | undefined;
  /** At least one; in the order of the text. */
  readonly landings: readonly Landing[];
  readonly addresses: AddressRange;
}

/** Between which numbers all addresses of some landings lie. */
export interface AddressRange {
  /** Infinite where there is none. */
  readonly least: number;
  readonly most: number;
  readonly allWhole: boolean;
  /** Every landing has one. */
  readonly complete: boolean;
}

export interface Census {
  /** Each landing belongs to one of them; in the order of their first landings. */
  readonly outfits: readonly Outfit[];
  /** All terminators of all landings; in the order of the text. */
  readonly terminators: readonly LandingTermination[];
  /** Landings that are terminated, switched, crossed or wired in an own way, or were meant to be; in the order of the text. */
  readonly remarked: readonly Landing[];
  /** Every address is higher than all that the text has before it, so that no two are the same. */
  readonly ascending: boolean;
}

class OutfitDraft implements Outfit, AddressRange {
  readonly landings: Landing[] = [];
  least = Number.POSITIVE_INFINITY;
  most = Number.NEGATIVE_INFINITY;
  allWhole = true;
  complete = true;

  constructor(
    readonly isSplice: boolean,
    readonly device: Device | undefined,
    readonly port: Port | undefined,
  ) {}

  get addresses(): AddressRange {
    return this;
  }

  fits({ splice, node, port }: Landing): boolean {
    return this.port === port && this.device === node?.device && this.isSplice === (splice !== undefined);
  }

  add(landing: Landing): void {
    this.landings.push(landing);
    const value = landing.address?.value;
    if (value === undefined) {
      this.complete = false;
      return;
    }
    if (value < this.least) this.least = value;
    if (this.most < value) this.most = value;
    if (!Number.isInteger(value)) this.allWhole = false;
  }
}

export function censusOf(bus: Bus): Census {
  const outfits: OutfitDraft[] = [];
  const remarked: Landing[] = [];
  const terminators: LandingTermination[] = [];
  let ascending = true;
  let highest = Number.NEGATIVE_INFINITY;
  let outfit: OutfitDraft | undefined;
  for (const landing of bus.landings) {
    // Mostly it is like the one before it.
    if (!outfit?.fits(landing)) outfit = outfitOf(landing, outfits);
    outfit.add(landing);
    if (isRemarked(landing)) {
      remarked.push(landing);
      for (const terminator of landing.terminations) terminators.push(terminator);
    }
    const value = landing.address?.value;
    if (value === undefined) continue;
    if (value <= highest) ascending = false;
    else highest = value;
  }
  return { outfits, terminators, remarked, ascending };
}

/** The one that a landing belongs to, made where there is none yet. */
function outfitOf(landing: Landing, outfits: OutfitDraft[]): OutfitDraft {
  for (const outfit of outfits) if (outfit.fits(landing)) return outfit;
  const { splice, node, port } = landing;
  const outfit = new OutfitDraft(splice !== undefined, node?.device, port);
  outfits.push(outfit);
  return outfit;
}

function isRemarked(landing: Landing): boolean {
  const { terminations, switchRequested, switchedOff, crossed, shield, wiring } = landing;
  return terminations.length > 0 || !!(switchRequested || switchedOff || crossed || wiring) || shield !== 'through';
}

/** The landings of all devices with the role `head`, in the order of the text. */
export function headsOf({ outfits }: Census): readonly Landing[] {
  const found = outfits.filter(({ device }) => device?.role === 'head');
  const [only, another] = found;
  if (!another) return only?.landings ?? [];
  return found.flatMap(({ landings }) => landings).sort((left, right) => left.index - right.index);
}
