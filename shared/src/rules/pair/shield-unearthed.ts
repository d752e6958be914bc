import { occasion } from '../../figures/occasions.js';
import { shieldNetwork } from '../../limits/free-topology.js';
import type { BusRule } from '../rule.js';
import { isPartlyShielded } from './cables.js';
import { exampleFile, soundFile } from './example.js';
import { oneEarthKinds } from './shield-sections.js';

export const shieldUnearthed: BusRule = {
  id: 'shield-unearthed',
  scope: 'bus',
  occasions: occasion.unusualEarths,
  severity: 'warning',
  kinds: [...oneEarthKinds, 'free-topology'],
  explanation: {
    what: 'The bus runs on shielded cable and its shield is earthed nowhere.',
    why:
      'An unearthed shield is one more wire along the pair: it picks noise up and couples it in, instead of leading it ' +
      'away.',
    field: 'No better than unshielded cable, and worse near drives; touching the drain wire changes the errors.',
    mend:
      'Earth the shield at one point, the head, and write `shield earthed at head`. On free topology it goes to earth ' +
      'through 0.1 uF with 470 kohm across, once per segment at least. Local codes and the maker come first.',
    bad: exampleFile(`from head : SiteHead terminate switch
38 ft to caseA1 : CaseBoard address 11
22 ft to caseA2 : CaseBoard address 12 terminate resistor 120 ohm
colours + white - blue shield drain`),
    good: soundFile,
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 3.6 (one end of each cable)',
      'Free topology transceiver data book: 0.1 uF with 470 kohm across, at least once per segment',
      'From memory of ANSI/ASHRAE 135 clause 9: one point of the segment',
    ],
    since: '0.1.0',
  },
  check(study, report) {
    const { bus, head } = study;
    // An earth at an unknown landing is one all the same; its name has its own finding.
    if (bus.damaged || bus.earths.length || !isPartlyShielded(study)) return;
    const free = bus.kind === 'free-topology';
    const at = head?.name ?? 'one point';
    report({
      message: free
        ? `the shield of bus ${bus.name} is earthed nowhere; lead it to earth at ${at} through 0.1 uF with 470 kohm across`
        : `the shield of bus ${bus.name} is earthed nowhere; earth it at ${at} and nowhere else`,
      place: bus.place,
      fixes: () =>
        head
          ? [
              {
                title: `Earth the shield at ${head.name}${free ? ' through 470 kohm and 0.1 uF' : ''}`,
                safe: false,
                edits: [
                  ...(head.shield === 'through'
                    ? []
                    : [{ kind: 'set-shield', bus: bus.index, landing: head.index, treatment: 'through' } as const]),
                  {
                    kind: 'earth-shield',
                    bus: bus.index,
                    landing: head.index,
                    ...(free && { through: shieldNetwork }),
                  },
                ],
              },
            ]
          : [],
    });
  },
};
