import { occasion } from '../../figures/occasions.js';
import { addressSpaces, areAddressesOf } from '../../limits/address.js';
import { exampleFile, soundFile, soundRemarks } from '../pair/example.js';
import type { BusRule } from '../rule.js';
import { addressFixes } from './addresses.js';

export const addressReserved: BusRule = {
  id: 'address-reserved',
  scope: 'bus',
  occasions: occasion.unusualAddress,
  severity: 'error',
  kinds: ['modbus-rtu'],
  explanation: {
    what: 'A Modbus device has address 0, which means all devices, or one of 248 to 255, which are reserved.',
    why: 'Nobody answers a broadcast, so a device at 0 cannot be read. Reserved addresses may be refused or used otherwise.',
    field: 'Writes seem to work and reads time out; or the device does not take the setting at all.',
    mend: 'Give the device a free address from 1 to 247.',
    bad: exampleFile(`from head : SiteHead terminate switch
38 ft to caseA1 : CaseBoard address 11
22 ft to caseA2 : CaseBoard address 0 terminate resistor 120 ohm
${soundRemarks}`),
    good: soundFile,
    sources: ['MODBUS over Serial Line, Specification and Implementation Guide V1.02, 2.2 and 5'],
    since: '0.1.0',
  },
  check({ store, bus, census }, report) {
    const space = bus.kind && addressSpaces[bus.kind];
    for (const { landings, addresses } of census.outfits) {
      if (areAddressesOf(bus.kind, addresses)) continue;
      for (const landing of landings) {
        const { address, name } = landing;
        const use = address && space?.reservedFor(address.value);
        if (!address || use === undefined) continue;
        report({
          message: `${name} has address ${address.value}, which is kept for ${use}; devices have ${space?.low} to ${space?.high} (${space?.source}): give it one of these`,
          place: address.place,
          at: name,
          fixes: () => addressFixes(store, bus, landing),
        });
      }
    }
  },
};
