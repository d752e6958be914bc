/** A terminator anywhere but at an end. */
import { occasion } from '../../figures/occasions.js';
import type { BusRule } from '../rule.js';
import { exampleOf } from '../shape/example.js';
import { signalEffect } from '../signal-effect.js';
import {
  canUnterminate,
  isBare,
  moveFix,
  severityBySource,
  terminatedEnds,
  terminatedKinds,
  terminationText,
  unterminateEdit,
} from './terminators.js';

export const terminatorMidline: BusRule = {
  id: 'terminator-midline',
  scope: 'bus',
  occasions: occasion.unusualTerminators,
  severity: 'error',
  kinds: terminatedKinds,
  check(study, report) {
    const { bus, census, shape } = study;
    const ends = terminatedEnds(study);
    if (!ends || bus.damaged) return;
    const [first, last] = [bus.landings[ends[0]]!, bus.landings[ends[1]]!];
    for (const landing of census.remarked) {
      const [termination] = landing.terminations;
      if (!termination || ends.includes(landing.index)) continue;
      const where = shape.onTap.has(landing.index) ? 'on a tap' : 'between the ends';
      report({
        message: `${landing.name} lies ${where} of bus ${bus.name} and is terminated by ${landing.terminations.map(terminationText).join(' and ')}; only the two ends, ${first.name} and ${last.name}, carry a terminator: remove this one`,
        place: termination.place ?? landing.place,
        at: landing.name,
        related: signalEffect(study, { terminatorsOf: landing.index }),
        severity: severityBySource(bus),
        fixes: () => {
          if (!canUnterminate(landing)) return [];
          return [
            ...[first, last].filter(isBare).map((end) => moveFix(bus, landing, end)),
            { title: `Remove the terminator of ${landing.name}`, safe: false, edits: [unterminateEdit(bus, landing)] },
          ];
        },
      });
    }
  },
  explanation: {
    what: 'A landing that is no end of the bus carries a terminator. It may lie between the ends or on a tap.',
    why: 'Midway, the wave meets the resistor in parallel with the cable that goes on: about two thirds of it pass, and a third comes back inverted (120 ohm across a 120 ohm line). Each resistor also takes current from every driver.',
    field:
      'It is mostly left behind when a bus was extended past its old end. An ohmmeter reads about 40 ohm with three terminators; the idle voltage is a third too low.',
    mend: 'Switch it off or take the resistor out. If an end has none, move it there.',
    bad: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to case1 : CaseBoard address 1 terminate switch',
      '22 ft to case2 : CaseBoard address 2 terminate switch',
    ]),
    good: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to case1 : CaseBoard address 1',
      '22 ft to case2 : CaseBoard address 2 terminate switch',
    ]),
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 3.4.5: near each of the two ends, never on a derivation',
      'Reflection at a shunt resistor, rho = -Z0 / (Z0 + 2 R): computed from line theory',
      'MS/TP: from memory of ANSI/ASHRAE 135 clause 9, hence a warning',
    ],
    since: '0.1.0',
  },
};
