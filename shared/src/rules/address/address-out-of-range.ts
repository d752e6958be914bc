import { occasion } from '../../figures/occasions.js';
import { addressSpaces, areAddressesOf, highestOf, isAddressOf } from '../../limits/address.js';
import { exampleFile, soundFile, soundRemarks } from '../pair/example.js';
import type { Bus, BusRule, Landing, Report, Store } from '../rule.js';
import { addressFixes, addressText } from './addresses.js';

export const addressOutOfRange: BusRule = {
  id: 'address-out-of-range',
  scope: 'bus',
  occasions: occasion.unusualAddress,
  severity: 'error',
  kinds: 'every',
  explanation: {
    what: 'An address that the kind of bus does not have: Modbus has 1 to 247; MS/TP has 0 to 254, and 0 to 127 for a head, since only masters pass the token; all are whole numbers.',
    why: 'The address travels as one byte of each message. What does not fit is cut down to some other address.',
    field: 'The setting is refused, or the device answers at an address that nobody wrote down.',
    mend: 'Give the device a free address inside the range.',
    bad: exampleFile(`from head : SiteHead terminate switch
38 ft to caseA1 : CaseBoard address 11
22 ft to caseA2 : CaseBoard address 300 terminate resistor 120 ohm
${soundRemarks}`),
    good: soundFile,
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 2.2',
      "ANSI/ASHRAE 135 clause 9, in the comments of an open source implementation that repeats the clause's parameters",
    ],
    since: '0.1.0',
  },
  check({ store, bus, census }, report) {
    for (const { device, landings, addresses } of census.outfits) {
      if (!areAddressesOf(bus.kind, addresses, device?.role)) checkAll(store, bus, landings, report);
    }
  },
};

function checkAll(store: Store, bus: Bus, landings: readonly Landing[], report: (finding: Report) => void): void {
  for (const landing of landings) {
    const { address, name, node } = landing;
    const role = node?.device?.role;
    if (!address || isAddressOf(bus.kind, address.value, role)) continue;
    const space = bus.kind && addressSpaces[bus.kind];
    // Reserved ones have a rule of their own.
    if (space?.reservedFor(address.value) !== undefined) continue;
    const isHigh = space && isAddressOf(bus.kind, address.value);
    const whose = isHigh ? `the ${bus.kind} address of a head, which passes the token,` : `a ${bus.kind} address`;
    report({
      message: space
        ? `${name} has ${addressText(address.value)}; ${whose} is a whole number from ${space.low} to ${highestOf(space, role)} (${space.source}): give it one of these`
        : `${name} has ${addressText(address.value)}; an address is a whole number from 0 up: give it one`,
      place: address.place,
      at: name,
      fixes: () => addressFixes(store, bus, landing),
    });
  }
}
