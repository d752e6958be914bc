import { occasion } from '../../figures/occasions.js';
import { exampleFile, soundFile, soundRemarks } from '../pair/example.js';
import type { BusRule } from '../rule.js';
import { addressFixes, freeAddress, settingText } from './addresses.js';

export const addressMissing: BusRule = {
  id: 'address-missing',
  scope: 'bus',
  occasions: occasion.unusualAddress,
  severity: 'error',
  kinds: 'every',
  explanation: {
    what: 'A device whose port takes an address has none in the plan. The head of a Modbus bus has none to have.',
    why:
      'A device keeps the address that it was made with until somebody sets another. Several of one kind then share ' +
      'it, and all answer at once.',
    field: 'The head finds one device of the kind, or none, where there are several; the readings jump between cases.',
    mend: 'Write `address N` after the landing and set it on the device before it is powered on the bus.',
    bad: exampleFile(`from head : SiteHead terminate switch
38 ft to caseA1 : CaseBoard
22 ft to caseA2 : CaseBoard address 12 terminate resistor 120 ohm
${soundRemarks}`),
    good: soundFile,
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 2.2 (each slave has its own address)',
    ],
    since: '0.1.0',
  },
  check({ store, bus, census }, report) {
    if (bus.damaged) return;
    for (const { device, port, landings, addresses } of census.outfits) {
      if (addresses.complete || !port?.address) continue;
      if (device?.role !== 'node' && !(device?.role === 'head' && bus.kind === 'bacnet-mstp')) continue;
      for (const landing of landings) {
        const { address, name, place } = landing;
        if (address) continue;
        const free = freeAddress(store, bus, landing);
        report({
          message: `${name} has no address on bus ${bus.name}; write address ${free ?? 'N'} and set it on the device (${settingText(landing)})`,
          place,
          at: name,
          fixes: () => addressFixes(store, bus, landing),
        });
      }
    }
  },
};
