/** Taps at one landing that are short each, and too long together. */

import { occasion } from '../../figures/occasions.js';
import type { BusStudy } from '../../figures/study.js';
import { modbusTapLimit, modbusTapShare } from '../../limits/tap.js';
import { formatRate, metres } from '../../quantity.js';
import type { BusRule, Report } from '../rule.js';
import { exampleOf } from './example.js';
import { exceeds, tapsByLanding } from './tap-limits.js';

export const tapsAddUp: BusRule = {
  id: 'taps-add-up',
  scope: 'bus',
  occasions: occasion.tap,
  severity: 'warning',
  kinds: ['modbus-rtu', 'can'],
  check(study, report) {
    const { bus } = study;
    if (bus.damaged) return;
    if (bus.kind === 'can') {
      checkStubs(study, report);
      return;
    }
    for (const [index, taps] of tapsByLanding(study)) {
      const limit = modbusTapLimit(taps.length).value;
      if (taps.some(({ reach }) => exceeds(reach, limit))) continue;
      const total = taps.reduce((sum, tap) => sum + tap.total, 0);
      if (!exceeds(total, modbusTapShare.value)) continue;
      const landing = bus.landings[index]!;
      const [cable, most, over] = [total, modbusTapShare.value, total - modbusTapShare.value].map((length) =>
        study.lengthText(metres(length)),
      );
      report({
        message: `${cable} of tap cable hang on ${landing.name}; ${most} is ${modbusTapShare.meaning} (${over} over): run the trunk through some of their devices`,
        place: landing.place,
        related: taps.map((tap) => ({
          message: `${study.lengthText(tap.total)} of cable hang on this tap`,
          place: bus.runs[tap.run]!.place,
        })),
        at: landing.name,
      });
    }
  },
  explanation: {
    what: 'Taps have more cable together than they may, though none reaches too far. On Modbus those of one landing count, which takes a tap that forks; on CAN those of the whole bus.',
    why: 'Every piece of open cable adds its capacitance at that point and sends its own echo.',
    field: 'A cabinet from which a tap fans out to many devices gives errors for the devices around it.',
    mend: 'Run the trunk through some of the devices, or let the forks start from different landings.',
    bad: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to case1 : CaseBoard address 1',
      'tap 10 ft to splice box',
      '22 ft to case2 : CaseBoard address 2 terminate switch',
      'from box',
      'tap 45 ft to probe1 : AirProbe address 3',
      'tap 45 ft to probe2 : AirProbe address 4',
      'tap 45 ft to probe3 : AirProbe address 5',
    ]),
    good: exampleOf([
      'from head : SiteHead terminate switch',
      '38 ft to case1 : CaseBoard address 1',
      'tap 10 ft to splice box',
      '22 ft to case2 : CaseBoard address 2 terminate switch',
      'from box',
      'tap 25 ft to probe1 : AirProbe address 3',
      'tap 25 ft to probe2 : AirProbe address 4',
    ]),
    sources: [
      'MODBUS over Serial Line, Specification and Implementation Guide V1.02, 3.4.3: n derivations of 40 m / n each have 40 m together; applying it to a tap that forks is our reading, hence a warning',
      'CAN: CiA bit timing table, sum of stubs by rate',
    ],
    since: '0.1.0',
  },
};

/** All stubs of a CAN bus. */
function checkStubs(study: BusStudy, report: (finding: Report) => void): void {
  const { bus, canGuide } = study;
  const rate = bus.rate?.value;
  const limit = rate === undefined ? undefined : canGuide.stubSum(rate);
  if (rate === undefined || limit === undefined) return;
  const stubs = [...tapsByLanding(study).values()].flat();
  const longest = canGuide.stub(rate) ?? Number.POSITIVE_INFINITY;
  const total = stubs.reduce((sum, tap) => sum + tap.total, 0);
  if (!exceeds(total, limit) || stubs.some(({ reach }) => exceeds(reach, longest))) return;
  const [cable, most, over] = [total, limit, total - limit].map((length) => study.lengthText(metres(length)));
  report({
    message: `the ${stubs.length} stubs of bus ${bus.name} have ${cable} of cable together; ${most} is the most at ${formatRate(rate)} (${over} over): run the line through some of their devices`,
    place: bus.place,
    related: stubs.map((tap) => ({
      message: `${study.lengthText(tap.total)} of cable hang on this tap`,
      place: bus.runs[tap.run]!.place,
    })),
  });
}
