/** A terminator that does not fit the cable. */
import { terminatorShare, usualTerminator } from '../../limits/terminator.js';
import { formatNumber, formatOhms, type Ohms } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { exampleOf } from '../shape/example.js';
import { impedanceAt, resistorFix, terminatedKinds, terminationText, terminatorFits } from './terminators.js';

export const terminatorValue: BusRule = {
  id: 'terminator-value',
  scope: 'bus',
  severity: 'warning',
  kinds: terminatedKinds,
  check(study, report) {
    const { bus, shape } = study;
    if (!shape.ends || bus.damaged) return;
    for (const index of shape.ends) {
      const landing = bus.landings[index]!;
      const [termination] = landing.terminations;
      if (!termination || landing.terminations.length > 1 || terminatorFits(bus, landing, termination.resistance))
        continue;
      const impedance = impedanceAt(bus, landing);
      const due = impedance ?? usualTerminator;
      const reason =
        impedance === undefined ? `${formatOhms(due)} are usual` : `its cable has an impedance of ${formatOhms(due)}`;
      const band = `${formatOhms((due * (1 - terminatorShare.value)) as Ohms)} to ${formatOhms((due * (1 + terminatorShare.value)) as Ohms)}`;
      const reflected = formatNumber(
        (100 * Math.abs(termination.resistance - due)) / (termination.resistance + due),
        0,
      );
      report({
        message: `${landing.name} is terminated by ${terminationText(termination)}, but ${reason}; ${band} are workable, and this one sends ${reflected} % of the wave back: use ${formatOhms(due)}`,
        place: termination.place ?? landing.place,
        at: landing.name,
        fixes: () =>
          termination.means === 'fixed' || !terminatorFits(bus, landing, due) ? [] : [resistorFix(bus, landing)],
      });
    }
  },
  explanation: {
    what: 'The terminator of an end is far from the characteristic impedance of the cable. More than a quarter off counts as far; 150 ohm is always accepted on Modbus.',
    why: 'The end sends back the share (R - Z0) / (R + Z0) of the wave. Too small a resistor also takes more current from every driver than it is made for.',
    field:
      'A wrong resistor works on the bench and fails with length. The reading of an ohmmeter at the end differs from the computed one.',
    mend: 'Land a resistor as large as the impedance of the cable. A capacitor in series with it is accepted.',
    bad: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to probe1 : AirProbe address 1 terminate resistor 60 ohm',
    ]),
    good: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to probe1 : AirProbe address 1 terminate resistor 120 ohm capacitor 1 nF',
    ]),
    sources: [
      'RS-485 tutorials of a transceiver maker: the terminator equals the impedance; 120 ohm +-30 ohm is workable',
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 3.4.5: 150 ohm, or 1 nF in series with 120 ohm',
    ],
    since: '0.1.0',
  },
};
