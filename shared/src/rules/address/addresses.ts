/** Which address is free for a landing. */
import { lineOf } from '../../figures/line.js';
import type { Fix } from '../../finding.js';
import { addressSpaces, highestOf, isAddressOf } from '../../limits/address.js';
import type { Bus, Landing, Store } from '../../network.js';

/**
 * The next address after those of the landings before this one that nobody on its line has, that the kind allows and that
 * the device can be set to; from the lowest again where none is left above.
 */
export function freeAddress(store: Store, bus: Bus, landing: Landing): number | undefined {
  const space = bus.kind && addressSpaces[bus.kind];
  const setting = landing.port?.address;
  // Masters of MS/TP, and whoever looks for them, want low addresses from 1 up; 0 is usually the head's.
  const low = Math.max(space?.low ?? 1, setting?.low ?? 1, bus.kind === 'bacnet-mstp' && setting?.low === 0 ? 1 : 0);
  const high = Math.min(space ? highestOf(space, landing.node?.device?.role) : 255, setting?.high ?? 255);
  const taken = new Set<number>();
  let before = low - 1;
  for (const other of lineOf(store, bus).flatMap(({ landings }) => landings)) {
    for (const { value } of [...(other.address ? [other.address] : []), ...other.otherAddresses]) {
      if (other !== landing) taken.add(value);
    }
  }
  for (const other of bus.landings) {
    if (other.index < landing.index && other.address && isAddressOf(bus.kind, other.address.value))
      before = other.address.value;
  }
  for (let address = Math.max(low, before + 1); address <= high; address++) if (!taken.has(address)) return address;
  for (let address = low; address <= Math.min(high, before); address++) if (!taken.has(address)) return address;
  return undefined;
}

/** Gives a landing the next free address, where there is one. */
export function addressFixes(store: Store, bus: Bus, landing: Landing): Fix[] {
  const address = freeAddress(store, bus, landing);
  if (address === undefined) return [];
  return [
    {
      title: `Give ${landing.name} address ${address}, the next free one`,
      safe: false,
      edits: [{ kind: 'set-address', bus: bus.index, landing: landing.index, address }],
    },
  ];
}

/** `address 12`; a number that no computer holds to its last digit is not repeated with wrong ones. */
export const addressText = (value: number): string =>
  Math.abs(value) <= Number.MAX_SAFE_INTEGER ? `address ${value}` : 'an address of more than 15 digits';

/** How the device shows its range: `its dial shows 1 to 99`. */
export function settingText(landing: Landing): string {
  const setting = landing.port?.address;
  if (!setting) return '';
  const means = { dial: 'its dial shows', switches: 'its switches make', software: 'its software takes' }[
    setting.means
  ];
  return `${means} ${setting.low} to ${setting.high}`;
}
