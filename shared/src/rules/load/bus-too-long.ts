import { lengthLimit } from '../../limits/length.js';
import { severityOf } from '../../limits/limit.js';
import { metres } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { divideFixes } from './divide.js';
import { loadExample } from './example.js';

/** All runs together, taps too, against the limit of the kind. A ring has its own finding first. */
export const busTooLong: BusRule = {
  id: 'bus-too-long',
  severity: 'error',
  kinds: ['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485'],
  scope: 'bus',
  check: (study, report) => {
    const limit = lengthLimit(study);
    if (!limit || study.length <= limit.value || study.shape.closing.length > 0) return;
    const { bus } = study;
    const over = study.lengthText(metres(study.length - limit.value));
    report({
      message: `bus ${bus.name} runs ${study.lengthText(study.length)}; ${study.lengthText(metres(limit.value))} is ${limit.meaning} (${over} over); shorten it or divide it with a repeater`,
      place: bus.place,
      severity: severityOf(limit),
      fixes: () => divideFixes(study, ({ length }) => study.lengthText(metres(length))),
    });
  },
  explanation: {
    what: 'The runs of a bus add up to more than its kind may have.',
    why: 'Copper resistance takes its share of the signal with every metre: at 1,200 m of 24 AWG two thirds of it are gone, and what is left must still move the last receiver past its threshold.',
    field:
      'The far devices answer only sometimes, worse when it is warm or when many answer at once; near ones never fail.',
    mend: 'Take a shorter way, or divide the bus with a repeater; a fix does that where the catalogue has one whose two ports take the bus and one is enough. Thicker cable helps the resistance but lifts no stated limit.',
    bad: loadExample({ runs: ['2100 ft', '2210 ft'], repeater: true }),
    good: loadExample(),
    sources: [
      'MODBUS over Serial Line V1.02, 3.4.3',
      'TIA/EIA-422-B annex A.1.1 (informative)',
      'ASHRAE 135-2004 clause 9.2 (as quoted publicly)',
    ],
    since: '0.1.0',
  },
};
