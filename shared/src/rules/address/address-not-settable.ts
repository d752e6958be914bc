import { occasion } from '../../figures/occasions.js';
import { isAddressOf } from '../../limits/address.js';
import { exampleFile, soundFile, soundRemarks } from '../pair/example.js';
import type { BusRule } from '../rule.js';
import { addressFixes, settingText } from './addresses.js';

export const addressNotSettable: BusRule = {
  id: 'address-not-settable',
  scope: 'bus',
  occasions: occasion.unusualAddress,
  severity: 'error',
  kinds: 'every',
  explanation: {
    what: 'The device cannot be set to the address that the plan gives it: its dial or switches do not go there.',
    why: "The installer can set only what the hardware shows. The nearest setting is somebody else's address.",
    field: "A call from the site, or a device at an address of the installer's own choice.",
    mend: "Give the device an address within its range, or correct the device's `address` line in the catalogue.",
    bad: exampleFile(`from head : SiteHead terminate switch
38 ft to caseA1 : CaseBoard address 11
22 ft to caseA2 : CaseBoard address 120 terminate resistor 120 ohm
${soundRemarks}`),
    good: soundFile,
    sources: ["The device's own documentation, as the catalogue repeats it"],
    since: '0.1.0',
  },
  check({ store, bus, census }, report) {
    for (const { device, port, landings, addresses } of census.outfits) {
      const setting = port?.address;
      if (!setting || (setting.low <= addresses.least && addresses.most <= setting.high)) continue;
      for (const landing of landings) {
        const { address, name } = landing;
        // An address that the kind itself does not have is told once, by the rule about the range.
        if (!address || !isAddressOf(bus.kind, address.value, device?.role)) continue;
        if (setting.low <= address.value && address.value <= setting.high) continue;
        report({
          message: `${name} cannot be set to address ${address.value}: ${settingText(landing)}; give it one of these`,
          place: address.place,
          related: [{ message: `port ${port.name} is described here`, place: port.place }],
          at: name,
          fixes: () => addressFixes(store, bus, landing),
        });
      }
    }
  },
};
