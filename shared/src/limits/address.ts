/** Which addresses a kind of bus has. */
import type { AddressRange } from '../figures/census.js';
import type { BusKind, DeviceRole } from '../network.js';

export interface AddressSpace {
  readonly low: number;
  readonly high: number;
  readonly source: string;
  /** The highest for a device that passes the token, where that is less; a head always is one. */
  readonly highOfMasters?: number;
  /** What an address inside the byte is kept for, when it is no device's. */
  reservedFor(address: number): string | undefined;
}

const modbus: AddressSpace = {
  low: 1,
  high: 247,
  source: 'Modbus serial line guide V1.02, 2.2',
  reservedFor: (address) =>
    address === 0 ? 'broadcast' : 248 <= address && address <= 255 ? 'reserved use (248 to 255)' : undefined,
};

const mstp: AddressSpace = {
  low: 0,
  high: 254,
  source: 'ASHRAE 135 clause 9',
  highOfMasters: 127,
  reservedFor: () => undefined,
};

/** Kinds whose addresses no document at hand limits are absent. */
export const addressSpaces: Readonly<Partial<Record<BusKind, AddressSpace>>> = {
  'modbus-rtu': modbus,
  'bacnet-mstp': mstp,
};

/** The highest address of a device in a space; of other roles than `head` the catalogue does not tell who is a master. */
export const highestOf = (space: AddressSpace, role: DeviceRole | undefined): number =>
  role === 'head' ? (space.highOfMasters ?? space.high) : space.high;

/** Whether all of some landings' addresses are of a kind. */
export const areAddressesOf = (
  kind: BusKind | undefined,
  { least, most, allWhole }: AddressRange,
  role?: DeviceRole,
): boolean => most < least || (allWhole && isAddressOf(kind, least, role) && isAddressOf(kind, most, role));

/** A whole number inside the kind's space; any whole number from 0 up where there is none. */
export function isAddressOf(kind: BusKind | undefined, address: number, role?: DeviceRole): boolean {
  if (!Number.isInteger(address) || address < 0) return false;
  const space = kind && addressSpaces[kind];
  return !space || (space.low <= address && address <= highestOf(space, role));
}
