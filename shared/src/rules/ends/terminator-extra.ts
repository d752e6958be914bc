/** Two terminators at one end, other than a switch and a resistor. */
import type { BusRule } from '../rule.js';
import { exampleOf } from '../shape/example.js';
import { isSwitchConflict } from './terminator-switch-conflict.js';
import { keepOnlyFix, severityBySource, terminatedKinds, terminationText } from './terminators.js';

export const terminatorExtra: BusRule = {
  id: 'terminator-extra',
  scope: 'bus',
  severity: 'error',
  kinds: terminatedKinds,
  check(study, report) {
    const { bus, shape } = study;
    if (!shape.ends || bus.damaged) return;
    for (const index of shape.ends) {
      const landing = bus.landings[index]!;
      const { terminations } = landing;
      if (terminations.length < 2 || isSwitchConflict(landing)) continue;
      const written = terminations.flatMap(({ place }) => (place ? [place] : []));
      report({
        message: `${landing.name} has ${terminations.length} terminators, ${terminations.map(terminationText).join(' and ')}; an end of bus ${bus.name} carries one, and the bus two at most: remove ${terminations.length - 1}`,
        place: written.at(-1) ?? landing.place,
        related: written.slice(0, -1).map((place) => ({ message: `${landing.name} is terminated here too`, place })),
        at: landing.name,
        severity: severityBySource(bus),
        fixes: () => {
          const fixed = terminations.filter(({ means }) => means === 'fixed');
          const kept = fixed[0] ?? terminations[0]!;
          return fixed.length < 2 ? [keepOnlyFix(landing, kept)] : [];
        },
      });
    }
  },
  explanation: {
    what: 'An end of the bus carries more than one terminator, so that the bus has more than two.',
    why: 'Two resistors in parallel are half as large as the cable needs: part of the wave comes back inverted. Drivers are made to feed two terminators, not three.',
    field:
      'An ohmmeter reads about 40 ohm across the pair of a short bus where about 60 ohm are due. The idle voltage is a third too low.',
    mend: 'Keep one terminator at each end. One that is fixed inside a device counts.',
    bad: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to case1 : CaseBoard address 1',
      '2 ft to probe1 : AirProbe address 2 terminate resistor 120 ohm terminate resistor 120 ohm',
    ]),
    good: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to case1 : CaseBoard address 1',
      '2 ft to probe1 : AirProbe address 2 terminate resistor 120 ohm',
    ]),
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 3.4.5: never more than two on a passive pair',
      'TIA-485-A: drivers are tested into 54 ohm, which stands for two terminators and 32 unit loads',
    ],
    since: '0.1.0',
  },
};
