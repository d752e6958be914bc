import { occasion } from '../../figures/occasions.js';
import type { Fix } from '../../finding.js';
import type { Bus } from '../../network.js';
import type { BusRule } from '../rule.js';
import { exampleFile, soundFile } from './example.js';
import { oneEarthKinds, shieldSections } from './shield-sections.js';

type Earth = Bus['earths'][number] & { readonly index: number };

export const shieldEarthedTwice: BusRule = {
  id: 'shield-earthed-twice',
  scope: 'bus',
  occasions: occasion.unusualEarths,
  severity: 'warning',
  kinds: oneEarthKinds,
  explanation: {
    what: 'One stretch of joined shield is earthed at two or more points.',
    why:
      'The earths of two panels differ by up to some volts, and during a fault by far more. Joined through the shield, ' +
      'they drive a current along it that couples into the pair and can heat the drain wire.',
    field:
      'A clamp meter around the cable shows mains-frequency current; communication fails when large loads start. Do ' +
      'not open such a shield with bare hands: qualified people measure first.',
    mend: 'Keep the earth at the head and insulate the drain everywhere else; or cut the shield between the two earths.',
    bad: exampleFile(`from head : SiteHead terminate switch
38 ft to caseA1 : CaseBoard address 11
22 ft to caseA2 : CaseBoard address 12 terminate resistor 120 ohm
shield earthed at head
shield earthed at caseA2
colours + white - blue shield drain`),
    good: soundFile,
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 3.6 (one end of each cable)',
      'From memory of ANSI/ASHRAE 135 clause 9: one point of the segment',
    ],
    since: '0.1.0',
  },
  check({ bus, head }, report) {
    if (bus.earths.length < 2) return;
    const sections = shieldSections(bus);
    const bySection = new Map<number, Earth[]>();
    bus.earths.forEach((earth, index) => {
      if (earth.landing === undefined) return;
      for (const section of sections.at(earth.landing)) {
        bySection.set(section, [...(bySection.get(section) ?? []), { ...earth, index }]);
      }
    });
    const told = new Set<number>();
    for (const earths of bySection.values()) {
      const [first, second, ...others] = earths;
      if (!first || !second || told.has(second.index)) continue;
      told.add(second.index);
      const nameOf = ({ landing }: Earth) => bus.landings[landing as number]?.name ?? '';
      const points = [...new Set(earths.map(nameOf))];
      report({
        message:
          points.length === 1
            ? `the shield of bus ${bus.name} is said to be earthed at ${points[0]} more than once; remove the repetition`
            : `the shield of bus ${bus.name} is earthed at ${points.length} points (${points.join(', ')}), and one is the most; keep one and insulate the others`,
        severity: points.length === 1 ? 'info' : 'warning',
        place: second.place,
        related: [first, ...others].map((earth) => ({
          message: `it is earthed at ${nameOf(earth)} too`,
          place: earth.place,
        })),
        at: nameOf(second),
        fixes: () => fixesOf(bus, earths, head?.index, nameOf),
      });
    }
  },
};

/** Keeps one earth: the head's first, where it has one. */
function fixesOf(
  bus: Bus,
  earths: readonly Earth[],
  head: number | undefined,
  nameOf: (earth: Earth) => string,
): Fix[] {
  const kept = new Map<number, Earth>();
  for (const earth of earths) if (!kept.has(earth.landing as number)) kept.set(earth.landing as number, earth);
  const choices = [...kept.values()].sort(
    (left, right) => Number(right.landing === head) - Number(left.landing === head),
  );
  return choices.map((keep) => ({
    title: `Earth the shield at ${nameOf(keep)} alone`,
    // Said twice of one point, the repetition has no effect.
    safe: choices.length === 1,
    edits: earths
      .filter((earth) => earth !== keep)
      .map(({ index }) => ({ kind: 'remove-earth', bus: bus.index, earth: index })),
  }));
}
