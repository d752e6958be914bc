/** A ring. */
import { occasion } from '../../figures/occasions.js';
import type { BusStudy } from '../../figures/study.js';
import type { Fix } from '../../finding.js';
import type { LandingIndex, Run } from '../../network.js';
import { saysMore, visitBy } from '../../visits.js';
import { severityBySource, terminatorEdits } from '../ends/terminators.js';
import type { BusRule } from '../rule.js';
import { exampleOf } from './example.js';
import { landsTwice } from './landed-twice.js';
import { runText, trunkKinds } from './names.js';
import { oneChainFixes } from './one-chain.js';

export const closedLoop: BusRule = {
  id: 'closed-loop',
  scope: 'bus',
  occasions: occasion.loop,
  severity: 'error',
  kinds: trunkKinds,
  check(study, report) {
    const { bus, shape } = study;
    if (bus.damaged) return;
    for (const index of shape.closing) {
      const run = bus.runs[index]!;
      if (run.to === undefined || landsTwice(bus, run) !== undefined) continue;
      const landing = bus.landings[run.to]!;
      report({
        message: `${runText(bus, index, study.lengthText)} closes a loop: other cables join the two already; bus ${bus.name} must have two open ends, so leave one run of the loop out`,
        place: run.place,
        related: [{ message: `the loop comes back to ${landing.name}`, place: landing.place }],
        at: landing.name,
        severity: severityBySource(bus),
        fixes: () => openFixes(study, run),
      });
    }
  },
  explanation: {
    what: 'The cables of the bus form a closed loop.',
    why: 'A wave goes round both ways and arrives twice, at different times. A loop has no ends, so that nothing can be terminated, and it is a large loop of wire for interference.',
    field:
      'It mostly works at low rates, which hides it: one broken wire goes unnoticed, and an ohmmeter finds no place for the fault. Errors come at higher rates.',
    mend: 'Leave one run out, best between two devices that can be terminated, and terminate the two ends that this makes.',
    bad: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to case1 : CaseBoard address 1',
      '22 ft to case2 : CaseBoard address 2 terminate switch',
      '50 ft to head',
    ]),
    good: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to case1 : CaseBoard address 1',
      '22 ft to case2 : CaseBoard address 2 terminate switch',
    ]),
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 3.4.2 and 3.4.5: one trunk with two ends',
      'Other kinds: common practice, no published source, hence a warning',
    ],
    since: '0.1.0',
  },
};

/** Leaves out the run that closes the loop, and terminates the chain that is left if it is one. */
function openFixes(study: BusStudy, run: Run): Fix[] {
  const { bus, shape } = study;
  const visit = run.to === undefined ? undefined : visitBy(bus.landings[run.to]!, run);
  // Properties that are written with the run would go with it.
  if (!visit || saysMore(visit)) return oneChainFixes(study, run);
  const degree = shape.trunkDegree.map(
    (count, landing) => count - Number(!run.tap && (landing === run.from || landing === run.to)),
  );
  const ends = [...degree.keys()].filter((landing) => degree[landing] === 1);
  const isChain =
    shape.closing.length === 1 &&
    shape.components.length === 1 &&
    shape.loose.length === 0 &&
    degree.every((count) => count <= 2);
  const [first, last] = ends;
  const both: readonly [LandingIndex, LandingIndex] | undefined =
    isChain && first !== undefined && last !== undefined && ends.length === 2 ? [first, last] : undefined;
  const title = `Leave out ${runText(bus, run.index, study.lengthText)}`;
  return [
    {
      title: both
        ? `${title}, so that ${bus.landings[both[0]]!.name} and ${bus.landings[both[1]]!.name} are the ends`
        : title,
      safe: false,
      edits: [{ kind: 'remove-run', bus: bus.index, run: run.index }, ...(both ? terminatorEdits(bus, both) : [])],
    },
  ];
}
