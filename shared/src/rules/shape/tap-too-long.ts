/** A tap longer than its kind of bus allows. */

import { occasion } from '../../figures/occasions.js';
import type { BusStudy, Tap } from '../../figures/study.js';
import { across } from '../../figures/walk.js';
import type { Fix } from '../../finding.js';
import { lengthLimit, limitedLength } from '../../limits/length.js';
import { terminatorEdits } from '../ends/terminators.js';
import type { BusRule } from '../rule.js';
import { signalEffect } from '../signal-effect.js';
import { exampleOf } from './example.js';
import { trunkKinds } from './names.js';
import { canRewire, chainThroughTap, courseOf } from './straighten.js';
import { tapsByLanding } from './tap-limits.js';
import { tapVerdict } from './tap-verdict.js';

export const tapTooLong: BusRule = {
  id: 'tap-too-long',
  scope: 'bus',
  occasions: occasion.tap,
  severity: 'error',
  kinds: [...trunkKinds, 'free-topology'],
  check(study, report) {
    const { bus } = study;
    if (bus.damaged) return;
    for (const taps of tapsByLanding(study).values()) {
      for (const tap of taps) {
        const verdict = tapVerdict(study, tap, taps.length);
        if (!verdict) continue;
        const run = bus.runs[tap.run]!;
        const { name } = bus.landings[across(run, tap.at)]!;
        const found = `the tap from ${bus.landings[tap.at]!.name} to ${name} reaches ${study.lengthText(tap.reach)}`;
        report({
          message: `${found}; ${verdict.limit}: run the trunk through ${name}${verdict.shorten ? ', or shorten the tap' : ''}`,
          place: run.lengthPlace,
          at: name,
          severity: verdict.severity,
          related: signalEffect(study, 'taps'),
          fixes: () => throughFixes(study, tap),
        });
      }
    }
  },
  explanation: {
    what: 'A tap reaches farther from the trunk than its kind of bus allows. On MS/TP every tap is too long.',
    why: 'The open end of a tap sends the wave back into the trunk. As long as it is back within a fraction of the edge of a bit, it only rounds the edge; later it lies over the bit. The edge of the drivers decides, not the rate; whether the echo is gone when receivers sample, a simulation of the bus tells beside the finding.',
    field:
      'The device on the tap and its neighbours see errors that come and go with temperature and with each device that is replaced by one with a faster driver.',
    mend: 'Run the trunk through the device: cable in, cable out. Otherwise move the tap nearer.',
    bad: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to case1 : CaseBoard address 1',
      'tap 80 ft to probe1 : AirProbe address 3',
      '22 ft to case2 : CaseBoard address 2 terminate switch',
    ]),
    good: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to case1 : CaseBoard address 1',
      'tap 12 ft to probe1 : AirProbe address 3',
      '22 ft to case2 : CaseBoard address 2 terminate switch',
    ]),
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 3.4.3: at most 20 m, and 40 m / n for each of n derivations of one tap',
      'rs485 and peer-485: data sheets of RS-485 transceivers, stub at most 0.1 x rise time x velocity, one way; advice, hence a warning, and a note where the simulated bus is healthy',
      'CAN: CiA bit timing table (stubs of 1.5 m at 1 Mbit/s to 275 m at 10 kbit/s); advice, hence a warning',
      'Free topology: transceiver data book, doubly terminated bus topology: stubs up to 3 m; other shapes have no limit for a stub',
      'MS/TP without taps: from memory of ANSI/ASHRAE 135 clause 9, hence a warning',
    ],
    since: '0.1.0',
  },
};

/** The trunk run through the tapped device; the way back from it is new cable that nobody has measured. */
function throughFixes(study: BusStudy, tap: Tap): Fix[] {
  const { bus, shape } = study;
  const chain = canRewire(bus, shape) ? chainThroughTap(bus, shape, tap.run, tap.at) : undefined;
  const last = chain?.links.at(-1);
  if (!chain || !last) return [];
  const run = bus.runs[tap.run]!;
  const name = bus.landings[across(run, tap.at)]!.name;
  const isNewEnd = !shape.ends?.includes(chain.start) || !shape.ends.includes(last.landing);
  // The tap becomes trunk, and so does the way back from it; what would be too long then is no remedy.
  const limit = lengthLimit(study);
  const counted = bus.kind === 'can' || bus.kind === 'free-topology' ? run.length : 0;
  if (limit && limit.value < limitedLength(study) + counted + (isNewEnd ? 0 : run.length)) return [];
  return [
    {
      title: isNewEnd
        ? `Run the trunk on to ${name}, which becomes an end of it`
        : `Run the trunk through ${name}: about ${study.lengthText(run.length)} more cable (the run on from there is not measured, taken along the cable that is there)`,
      safe: false,
      edits: [
        { kind: 'rewire', bus: bus.index, course: courseOf(bus, shape, chain) },
        ...(isNewEnd ? terminatorEdits(bus, [chain.start, last.landing]) : []),
      ],
    },
  ];
}
