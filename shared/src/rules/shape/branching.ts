/** Three or more trunk cables at one landing. */
import { occasion } from '../../figures/occasions.js';
import type { LandingIndex } from '../../network.js';
import { severityBySource } from '../ends/terminators.js';
import type { BusRule } from '../rule.js';
import { exampleOf } from './example.js';
import { passesTwice } from './landed-twice.js';
import { runText, trunkKinds } from './names.js';
import { oneChainFixes } from './one-chain.js';

export const branching: BusRule = {
  id: 'branching',
  scope: 'bus',
  occasions: occasion.branch,
  severity: 'error',
  kinds: trunkKinds,
  check(study, report) {
    const { bus, shape } = study;
    if (bus.damaged) return;
    // Cables that close a loop have their own finding; what is left decides.
    const closing = new Map<LandingIndex, number>();
    const count = (landing: LandingIndex, cables: number) => closing.set(landing, (closing.get(landing) ?? 0) + cables);
    for (const index of shape.closing) {
      const run = bus.runs[index]!;
      if (run.tap || run.to === undefined || run.to === run.from) continue;
      count(run.from, 1);
      count(run.to, passesTwice(bus, run) ? 2 : 1);
    }
    for (const index of shape.branches) {
      const landing = bus.landings[index]!;
      const cables = shape.trunkDegree[index]! - (closing.get(index) ?? 0);
      if (cables < 3) continue;
      report({
        message: `${cables} trunk cables meet at ${landing.name}; bus ${bus.name} may only pass from one device to the next, with two cables at each: run it as one chain (${cables - 2} too many here)`,
        place: landing.place,
        related: landing.runs
          .filter((run) => !bus.runs[run]!.tap)
          .map((run) => ({
            message: `${runText(bus, run, study.lengthText)} meets here`,
            place: bus.runs[run]!.place,
          })),
        at: landing.name,
        severity: severityBySource(bus),
        fixes: () => oneChainFixes(study),
      });
    }
  },
  explanation: {
    what: 'Three or more cables of the trunk meet at one landing, so that the bus is a star or a tree.',
    why: 'A wave that arrives at a fork meets several cables in parallel, about half the impedance it comes from, and a part of it comes back inverted. A bus with three or more ends cannot be terminated with the two resistors that its drivers are made for.',
    field:
      'Some branches work and others do not; adding a terminator helps one branch and hurts another. Faults move when a branch is unplugged.',
    mend: 'Run the cable from device to device. Where that is impossible, put a repeater at the fork, so that each branch is a bus of its own.',
    bad: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to case1 : CaseBoard address 1',
      '22 ft to case2 : CaseBoard address 2 terminate switch',
      'from case1',
      '40 ft to case3 : CaseBoard address 3',
    ]),
    good: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to case1 : CaseBoard address 1',
      '22 ft to case2 : CaseBoard address 2',
      '62 ft to case3 : CaseBoard address 3 terminate switch',
    ]),
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 3.4.2: one trunk, devices chained or on short derivations',
      'CAN: one line with two ends, TI SLOA101B; Philips AN96116, section 6, permits stars at low rates, hence a warning',
      'Other kinds: common practice, following from two terminators at the two ends of a trunk; MS/TP from memory of ANSI/ASHRAE 135 clause 9; hence a warning',
    ],
    since: '0.1.0',
  },
};
