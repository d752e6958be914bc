/** A terminator that does not fit the cable. */
import { occasion } from '../../figures/occasions.js';
import type { BusStudy } from '../../figures/study.js';
import {
  dueResistance,
  dueTermination,
  impedanceAt,
  isSegmentTerminator,
  isWorkable,
  terminatorBand,
} from '../../limits/due-terminator.js';
import { segmentForm } from '../../limits/free-topology.js';
import { limitedLength } from '../../limits/length.js';
import type { Bus, Landing } from '../../network.js';
import { formatNumber, formatOhms, type Ohms } from '../../quantity.js';
import type { BusRule, Report } from '../rule.js';
import { exampleOf } from '../shape/example.js';
import { signalEffect } from '../signal-effect.js';
import { partsText, resistorFix, terminatedKinds, terminationText } from './terminators.js';

/** Why just this resistance is due, as a clause. */
function becauseOf(bus: Bus, landing: Landing, due: Ohms): string {
  if (bus.kind === 'can') return `${formatOhms(due)} are usual on CAN`;
  return impedanceAt(bus, landing) === undefined
    ? `${formatOhms(due)} are usual`
    : `its cable has an impedance of ${formatOhms(due)}`;
}

export const terminatorValue: BusRule = {
  id: 'terminator-value',
  scope: 'bus',
  occasions: occasion.oddTerminator,
  severity: 'warning',
  kinds: terminatedKinds,
  check(study, report) {
    const { bus, shape } = study;
    if (bus.damaged) return;
    if (bus.kind === 'free-topology') checkSegment(study, report);
    else
      for (const index of shape.ends ?? []) {
        const landing = bus.landings[index]!;
        const [termination] = landing.terminations;
        if (!termination || landing.terminations.length > 1) continue;
        const due = dueResistance(bus, landing);
        // Nobody drives a recessive bit: the terminators bring the pair back to it, which a capacitor would not let them.
        if (bus.kind === 'can' && termination.capacitance !== undefined) {
          report({
            message: `${landing.name} is terminated by ${terminationText(termination)}; on CAN the terminator also brings the pair back to its recessive level, which a capacitor in series prevents: land ${partsText({ resistance: due })}`,
            place: termination.place ?? landing.place,
            at: landing.name,
            fixes: () => (termination.means === 'fixed' ? [] : [resistorFix(bus, landing)]),
          });
          continue;
        }
        const band = terminatorBand(bus, landing, limitedLength(study));
        if (isWorkable(bus, termination.resistance, band)) continue;
        const reflected = formatNumber(
          (100 * Math.abs(termination.resistance - due)) / (termination.resistance + due),
          0,
        );
        report({
          message: `${landing.name} is terminated by ${terminationText(termination)}, but ${becauseOf(bus, landing, due)}; ${formatOhms(band.low)} to ${formatOhms(band.high)} are workable, and this one sends ${reflected} % of the wave back: use ${formatOhms(due)}`,
          place: termination.place ?? landing.place,
          at: landing.name,
          related: signalEffect(study, { terminatorsOf: index }),
          fixes: () =>
            termination.means === 'fixed' || !isWorkable(bus, due, band) ? [] : [resistorFix(bus, landing)],
        });
      }
  },
  explanation: {
    what: 'The terminator of an end is far from the characteristic impedance of the cable, or not the one that a free-topology segment takes. More than a quarter off counts as far; 150 ohm is always accepted on Modbus, 100 to 130 ohm on CAN, up to 300 ohm on a CAN line of more than 40 m.',
    why: 'The end sends back the share (R - Z0) / (R + Z0) of the wave. Too small a resistor also takes more current from every driver than it is made for.',
    field:
      'A wrong resistor works on the bench and fails with length. The reading of an ohmmeter at the end differs from the computed one.',
    mend: 'Land a resistor as large as the impedance of the cable. On RS-485 a capacitor in series with it is accepted, on CAN never. On free topology land the network of the data book: 52.3 ohm in a segment of free form, 105 ohm at each end of a bus, always with two 100 uF capacitors back to back in series.',
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
      'ISO 11898-2:2003, as reprinted: 100 to 130 ohm; 150 to 300 ohm on long CAN lines from memory of CiA 303-1',
      'CAN without a capacitor in series: from memory of ISO 11898-2, whose drivers leave the recessive level to the terminators',
      'Free topology transceiver data book: 52.3 ohm or 105 ohm of 1 %, with two 100 uF capacitors back to back',
    ],
    since: '0.1.0',
  },
};

/** The resistor of the segment's form, with its capacitors. Landings with several terminators have another finding. */
function checkSegment(study: BusStudy, report: (finding: Report) => void): void {
  const { bus, census, shape } = study;
  const form = segmentForm(study);
  const terminated = census.remarked.filter(({ terminations }) => terminations.length > 0);
  if (form === 'free' && 1 < terminated.length) return;
  for (const landing of terminated) {
    const [termination, another] = landing.terminations;
    const due = dueTermination(bus, landing, form);
    if (!termination || another || (form === 'bus' && !shape.ends?.includes(landing.index))) continue;
    if (isSegmentTerminator(termination, due)) continue;
    const where =
      form === 'bus' ? 'each end of a doubly terminated bus' : 'a segment of free form, which has just one,';
    const lack = termination.capacitance === undefined ? ' without a capacitor in series' : '';
    report({
      message: `${landing.name} is terminated by ${terminationText(termination)}${lack}; ${where} takes ${partsText(due)}: land that instead`,
      place: termination.place ?? landing.place,
      at: landing.name,
      fixes: () => (termination.means === 'fixed' ? [] : [resistorFix(bus, landing, form)]),
    });
  }
}
