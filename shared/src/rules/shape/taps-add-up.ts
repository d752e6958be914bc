/** Taps at one landing that are short each, and too long together. */

import { occasion } from '../../figures/occasions.js';
import type { BusStudy } from '../../figures/study.js';
import { modbusTapShare } from '../../limits/tap.js';
import type { Landing } from '../../network.js';
import { formatRate, metres } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { signalEffect } from '../signal-effect.js';
import { exampleOf } from './example.js';
import { type TapSum, tapSums } from './tap-verdict.js';

export const tapsAddUp: BusRule = {
  id: 'taps-add-up',
  scope: 'bus',
  occasions: occasion.tap,
  severity: 'warning',
  kinds: ['modbus-rtu', 'can'],
  check(study, report) {
    const { bus } = study;
    if (bus.damaged) return;
    for (const sum of tapSums(study)) {
      const landing = sum.at === undefined ? undefined : bus.landings[sum.at]!;
      report({
        message: landing ? landingText(study, landing, sum) : busText(study, sum),
        place: landing?.place ?? bus.place,
        related: [
          ...sum.taps.map((tap) => ({
            message: `${study.lengthText(tap.total)} of cable hang on this tap`,
            place: bus.runs[tap.run]!.place,
          })),
          ...signalEffect(study, 'taps'),
        ],
        ...(landing && { at: landing.name }),
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

function landingText(study: BusStudy, { name }: Landing, sum: TapSum): string {
  const [cable, most, over] = lengths(study, sum);
  return `${cable} of tap cable hang on ${name}; ${most} is ${modbusTapShare.meaning} (${over} over): run the trunk through some of their devices`;
}

function busText(study: BusStudy, sum: TapSum): string {
  const [cable, most, over] = lengths(study, sum);
  const rate = formatRate(study.bus.rate!.value);
  return `the ${sum.taps.length} stubs of bus ${study.bus.name} have ${cable} of cable together; ${most} is the most at ${rate} (${over} over): run the line through some of their devices`;
}

const lengths = ({ lengthText }: BusStudy, { total, limit }: TapSum): readonly string[] =>
  [total, limit, metres(total - limit)].map(lengthText);
