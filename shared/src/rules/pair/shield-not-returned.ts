import { occasion } from '../../figures/occasions.js';
import type { BusRule } from '../rule.js';
import { isShielded } from './cables.js';
import { exampleFile, soundFile } from './example.js';
import { oneEarthKinds } from './shield-sections.js';

export const shieldNotReturned: BusRule = {
  id: 'shield-not-returned',
  scope: 'bus',
  occasions: occasion.unusualShield | occasion.noShieldTerminal,
  severity: 'warning',
  kinds: oneEarthKinds,
  explanation: {
    what: "The shield is not landed at the head's shield terminal, or the head has none where the plan earths it.",
    why:
      'The head is where the shield is led to earth. A shield that ends in the air beside the terminal protects ' +
      'nothing, however well it is joined along the chain.',
    field: 'The drain wire is cut back or taped at the head, and noise troubles all devices alike.',
    mend:
      "Land the drain at the head's shield terminal. Where the head has none, land it at the panel's earth bar beside " +
      'the head, in the way that its maker and the local code allow.',
    bad: exampleFile(`from head : SiteHead terminate switch shield floating
38 ft to caseA1 : CaseBoard address 11
22 ft to caseA2 : CaseBoard address 12 terminate resistor 120 ohm
shield earthed at head
colours + white - blue shield drain`),
    good: soundFile,
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 3.4.4 and 3.6 (earth at one end, generally the master)',
      'Common practice, no published source, for the terminal of the head',
    ],
    since: '0.1.0',
  },
  check({ bus, heads }, report) {
    for (const head of heads) {
      if (!head.runs.some((run) => isShielded(bus.runs[run]!.cable))) continue;
      const here = bus.earths.some(({ landing }) => landing === head.index);
      const elsewhere = bus.earths.some(({ landing }) => landing !== head.index);
      const mark = head.port?.terminals.shield;
      if (head.shield !== 'through') {
        // Kept off the head and earthed at another point is earthed once, as it should be.
        if (elsewhere && !here) continue;
        report({
          message: `the shield is ${head.shield === 'open' ? 'left open' : 'kept floating'} at ${head.name}, the head; land it at ${mark === undefined ? 'its shield terminal' : `terminal ${mark}`}`,
          place: head.shieldPlace ?? head.place,
          at: head.name,
          fixes: () => [
            {
              title: `Land the shield at ${head.name}`,
              safe: false,
              edits: [{ kind: 'set-shield', bus: bus.index, landing: head.index, treatment: 'through' }],
            },
          ],
        });
      } else if (here && head.port && mark === undefined && head.port.terminals.plus !== undefined) {
        const earth = bus.earths.find(({ landing }) => landing === head.index);
        report({
          severity: 'info',
          message: `the shield is earthed at ${head.name}, whose port ${head.port.name} has no shield terminal; land it at the panel's earth bar beside it`,
          place: earth?.place ?? head.place,
          related: [{ message: `port ${head.port.name} names its terminals here`, place: head.port.place }],
          at: head.name,
        });
      }
    }
  },
};
