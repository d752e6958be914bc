/** An end of the bus without a terminator. */

import { occasion } from '../../figures/occasions.js';
import { dueTermination } from '../../limits/due-terminator.js';
import { formatOhms } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { exampleOf } from '../shape/example.js';
import { signalEffect } from '../signal-effect.js';
import {
  canUnterminate,
  hasSwitch,
  isBare,
  moveFix,
  partsText,
  severityBySource,
  terminatedEnds,
  terminatedKinds,
  terminateEdit,
  terminateTitle,
} from './terminators.js';

export const endUnterminated: BusRule = {
  id: 'end-unterminated',
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
      if (!isBare(landing)) continue;
      const due = dueTermination(bus, landing);
      const means = hasSwitch(bus, landing)
        ? 'switch its terminator on'
        : `land ${partsText(due)} across the pair there`;
      report({
        message: `${landing.name} is an end of bus ${bus.name} and has no terminator; each of the two ends needs one of about ${formatOhms(due.resistance)}: ${means}`,
        place: landing.place,
        at: landing.name,
        severity: severityBySource(bus),
        related: [
          ...(landing.switchedOff
            ? [{ message: `the terminator of ${landing.name} is said to be off here`, place: landing.switchedOff }]
            : []),
          ...signalEffect(study, { terminatorsOf: index }),
        ],
        fixes: () => {
          const moves = bus.landings
            .filter((other) => !ends.includes(other.index) && canUnterminate(other))
            .map((other) => moveFix(bus, other, landing));
          // A switch that is there and not said to be off is where it must be; a resistor, or a move, is a decision.
          const safe = moves.length === 0 && hasSwitch(bus, landing) && !landing.switchedOff;
          return [...moves, { title: terminateTitle(bus, landing), safe, edits: [terminateEdit(bus, landing)] }];
        },
      });
    }
  },
  explanation: {
    what: 'An end of the bus carries no terminator. An end is a landing of the trunk where just one cable arrives.',
    why: 'A wave that reaches an open end comes back at full height and lies over the bits that follow. A resistor as large as the characteristic impedance of the cable takes the wave in.',
    field:
      'Errors grow with rate and length, and devices near the open end are hit first. With one of two terminators missing, an ohmmeter reads about 120 ohm across the pair where about 60 ohm are due on a short bus, and the idle voltage is about double.',
    mend: 'Switch on the terminator of the device at the end, or land a resistor there. Do not add one anywhere else.',
    bad: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to case1 : CaseBoard address 1',
      '22 ft to case2 : CaseBoard address 2',
    ]),
    good: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to case1 : CaseBoard address 1',
      '22 ft to case2 : CaseBoard address 2 terminate switch',
    ]),
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 3.4.5',
      'RS-485 tutorials of a transceiver maker: one resistor equal to the characteristic impedance at each end',
      'MS/TP: from memory of ANSI/ASHRAE 135 clause 9, hence a warning',
      'CAN: TI SLOA101B, a resistor at each end of the line; Philips AN96116, section 6, knows exceptions at low rates, hence a warning',
      'Free topology: transceiver data book, doubly terminated bus topology: two terminators, one at each end',
    ],
    since: '0.1.0',
  },
};
