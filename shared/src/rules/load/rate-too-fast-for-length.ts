import { occasion } from '../../figures/occasions.js';
import type { BusStudy } from '../../figures/study.js';
import type { Fix } from '../../finding.js';
import { isWithinGuide, lengthForRate, lengthLimit, limitedLength } from '../../limits/length.js';
import { slowerRates } from '../../limits/rates.js';
import { answersAt } from '../../physics/can.js';
import { type BitsPerSecond, formatRate, metres } from '../../quantity.js';
import type { BusRule, Report } from '../rule.js';
import { signalEffect } from '../signal-effect.js';
import { loadExample } from './example.js';

/** Length times rate, above the rate where copper resistance is what limits. */
export const rateTooFastForLength: BusRule = {
  id: 'rate-too-fast-for-length',
  occasions: occasion.long,
  severity: 'warning',
  kinds: ['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485', 'can'],
  scope: 'bus',
  check: (study, report) => {
    if (study.bus.kind === 'can') {
      checkCan(study, report);
      return;
    }
    const { rate, kind, name } = study.bus;
    const limit = rate && lengthForRate(kind, rate.value);
    // A bus that is too long at any rate is told as that.
    const longest = lengthLimit(study)?.value ?? Number.POSITIVE_INFINITY;
    if (!limit || longest < study.length || study.length <= limit.value) return;
    report({
      message: `bus ${name} runs ${study.lengthText(study.length)} at ${formatRate(rate.value)}; guidance gives ${study.lengthText(metres(limit.value))} at this rate; slow it down or shorten it`,
      place: rate.place,
      related: signalEffect(study, 'rate'),
      fixes: () =>
        slowerFixes(
          study,
          (slower) => study.length <= (lengthForRate(kind, slower)?.value ?? Number.POSITIVE_INFINITY),
        ),
    });
  },
  explanation: {
    what: 'A bus is faster than guidance allows for its length.',
    why: 'A long line rounds the edges: at a high rate a bit ends before its level has settled at the far end. On CAN the nodes also answer within the bit, so that it must last for the way there and back.',
    field: 'Checksum errors that come with the rate and go when it is lowered.',
    mend: 'Lower the rate on every device of the bus, or shorten it.',
    bad: loadExample({ rate: '115200', runs: ['2100 ft', '1100 ft'] }),
    good: loadExample(),
    sources: [
      'TIA/EIA-422-B annex A.1.1 (informative): length times rate up to 10^8 m bit/s',
      'CAN: CiA 301 and 102, bit timing table: 25 m at 1 Mbit/s to 5,000 m at 10 kbit/s; the line from end to end, its stubs aside',
    ],
    since: '0.1.0',
  },
};

/** The length that the guide allows at the bus's rate. What is no chain counts with all of its cable. */
function checkCan(study: BusStudy, report: (finding: Report) => void): void {
  const { rate, name } = study.bus;
  const limit = lengthLimit(study);
  const length = limitedLength(study);
  if (!rate || !limit || length <= limit.value) return;
  report({
    message: `bus ${name} runs ${study.lengthText(length)}; ${study.lengthText(metres(limit.value))} is ${limit.meaning} (${study.lengthText(metres(length - limit.value))} over); slow it down or shorten it`,
    place: rate.place,
    fixes: () => slowerFixes(study, (slower) => isWithinGuide(study, slower) && answersAt(study, slower)),
  });
}

/** The fastest of the slower usual rates that will do and that every device can be set to. */
export function slowerFixes({ bus }: BusStudy, willDo: (rate: BitsPerSecond) => boolean): Fix[] {
  const slower = slowerRates(bus).find(willDo);
  if (slower === undefined) return [];
  return [
    {
      title: `Run at ${formatRate(slower)}`,
      safe: false,
      edits: [{ kind: 'set-rate', bus: bus.index, rate: slower }],
    },
  ];
}
