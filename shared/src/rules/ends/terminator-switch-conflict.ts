/** A built-in terminator switched on beside a resistor at the same end. */
import { occasion } from '../../figures/occasions.js';
import type { Landing } from '../../network.js';
import type { BusRule } from '../rule.js';
import { exampleOf } from '../shape/example.js';
import { keepOnlyFix, severityBySource, terminatedEnds, terminatedKinds, terminationText } from './terminators.js';

/** Just one switch that is on, and just one resistor. */
export const isSwitchConflict = ({ terminations }: Landing): boolean =>
  terminations.length === 2 &&
  terminations.some(({ means }) => means === 'switch') &&
  terminations.some(({ means }) => means === 'resistor');

export const terminatorSwitchConflict: BusRule = {
  id: 'terminator-switch-conflict',
  scope: 'bus',
  occasions: occasion.unusualTerminators,
  severity: 'error',
  kinds: terminatedKinds,
  check(study, report) {
    const { bus } = study;
    const ends = terminatedEnds(study);
    if (!ends || bus.damaged) return;
    for (const index of ends) {
      const landing = bus.landings[index]!;
      if (!isSwitchConflict(landing)) continue;
      const [first, second] = landing.terminations;
      report({
        message: `${landing.name} is terminated twice, by ${landing.terminations.map(terminationText).join(' and ')}; an end of bus ${bus.name} carries one terminator: switch the built-in one off or take the resistor out`,
        place: second!.place ?? landing.place,
        related: first!.place ? [{ message: `${landing.name} is terminated here already`, place: first!.place }] : [],
        at: landing.name,
        severity: severityBySource(bus),
        fixes: () =>
          [...landing.terminations]
            .sort((left, right) => Number(right.means === 'switch') - Number(left.means === 'switch'))
            .map((kept) => keepOnlyFix(landing, kept)),
      });
    }
  },
  explanation: {
    what: 'The built-in terminator of a device at an end is on, and a resistor is landed beside it.',
    why: 'The two in parallel are half as large as the cable needs: a wave that arrives comes back inverted at a third of its height, and every driver has a third terminator to feed.',
    field:
      'It happens when an installer lands a resistor and the switch was on from the factory. An ohmmeter reads about 40 ohm across the pair of a short bus where about 60 ohm are due.',
    mend: 'Keep one of the two. The switch is easier to see and to check later.',
    bad: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to case1 : CaseBoard address 1 terminate switch terminate resistor 120 ohm',
    ]),
    good: exampleOf(['from head : SiteHead terminate switch', '38 ft to case1 : CaseBoard address 1 terminate switch']),
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 3.4.5: never more than two on a passive pair',
      'Reflection from R = Z0 / 2, rho = (R - Z0) / (R + Z0) = -1/3: computed from line theory',
    ],
    since: '0.1.0',
  },
};
