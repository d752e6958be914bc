/** Two terminators at one end, other than a switch and a resistor. */

import { occasion } from '../../figures/occasions.js';
import type { BusStudy } from '../../figures/study.js';
import type { Fix } from '../../finding.js';
import { listed } from '../../known.js';
import { isSegmentTerminator } from '../../limits/due-terminator.js';
import { segmentForm, segmentTerminators } from '../../limits/free-topology.js';
import type { Bus, Landing } from '../../network.js';
import type { BusRule, Report } from '../rule.js';
import { exampleOf } from '../shape/example.js';
import { signalEffect } from '../signal-effect.js';
import { isSwitchConflict } from './terminator-switch-conflict.js';
import {
  canUnterminate,
  keepOnlyFix,
  partsText,
  severityBySource,
  terminatedEnds,
  terminatedKinds,
  terminateEdit,
  terminationText,
  unterminateEdit,
} from './terminators.js';

export const terminatorExtra: BusRule = {
  id: 'terminator-extra',
  scope: 'bus',
  occasions: occasion.unusualTerminators,
  severity: 'error',
  kinds: terminatedKinds,
  check(study, report) {
    const { bus } = study;
    if (bus.damaged) return;
    if (bus.kind === 'free-topology' && segmentForm(study) === 'free') checkSegment(study, report);
    for (const index of terminatedEnds(study) ?? []) {
      const landing = bus.landings[index]!;
      const { terminations } = landing;
      if (terminations.length < 2 || isSwitchConflict(landing)) continue;
      const written = terminations.flatMap(({ place }) => (place ? [place] : []));
      report({
        message: `${landing.name} has ${terminations.length} terminators, ${terminations.map(terminationText).join(' and ')}; an end of bus ${bus.name} carries one, and the bus two at most: remove ${terminations.length - 1}`,
        place: written.at(-1) ?? landing.place,
        related: [
          ...written.slice(0, -1).map((place) => ({ message: `${landing.name} is terminated here too`, place })),
          ...signalEffect(study, { terminatorsOf: index }),
        ],
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
    what: 'An end of the bus carries more than one terminator, so that the bus has more than two. A free-topology segment that is no doubly terminated bus takes one terminator in all.',
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
      'Free topology transceiver data book: exactly one terminator, anywhere on the segment',
      'TIA-485-A: drivers are tested into 54 ohm, which stands for two terminators and 32 unit loads',
    ],
    since: '0.1.0',
  },
};

/** A segment of free form has one terminator in all: the first one stays. */
function checkSegment({ bus, census }: BusStudy, report: (finding: Report) => void): void {
  const terminated = census.remarked.filter(({ terminations }) => terminations.length > 0);
  const all = terminated.flatMap((landing) => landing.terminations.map((termination) => ({ landing, termination })));
  const last = all.at(-1);
  if (!last || all.length < 2) return;
  report({
    message: `segment ${bus.name} has ${all.length} terminators, at ${listed(terminated.map(({ name }) => name))}; free topology takes exactly one, anywhere on the segment, unless it is one chain with one at each end: remove ${all.length - 1}`,
    place: last.termination.place ?? last.landing.place,
    related: all
      .slice(0, -1)
      .flatMap(({ landing, termination }) =>
        termination.place ? [{ message: `${landing.name} is terminated here`, place: termination.place }] : [],
      ),
    at: last.landing.name,
    fixes: () => oneTerminatorFix(bus, terminated),
  });
}

/** Keeps the one that fits, else makes the first one fit; nothing where one is fixed inside a device. */
function oneTerminatorFix(bus: Bus, terminated: readonly Landing[]): Fix[] {
  const due = segmentTerminators.free;
  const sound = terminated.find(
    ({ terminations }) => terminations.length === 1 && terminations.every((one) => isSegmentTerminator(one, due)),
  );
  const kept = sound ?? terminated[0];
  const others = terminated.filter((landing) => landing !== kept);
  if (!kept || !others.every(canUnterminate) || (!sound && !canUnterminate(kept))) return [];
  return [
    {
      title: sound
        ? `Keep the terminator of ${kept.name} alone`
        : `Terminate ${kept.name} with ${partsText(due)}, and nothing else`,
      safe: false,
      edits: [
        ...(sound ? [] : [terminateEdit(bus, kept, 'free')]),
        ...others.map((landing) => unterminateEdit(bus, landing)),
      ],
    },
  ];
}
