import { occasion } from '../../figures/occasions.js';
import { isUnknown } from '../../known.js';
import { severityOf } from '../../limits/limit.js';
import { loadLimit } from '../../limits/load.js';
import { formatNumber } from '../../quantity.js';
import type { BusRule } from '../rule.js';
import { divideAdvice, divideFixes, partTexts } from './divide.js';
import { crowd, loadExample } from './example.js';

/** Sum of the unit loads that the catalogue states. */
export const loadOverBudget: BusRule = {
  id: 'load-over-budget',
  occasions: occasion.loaded,
  severity: 'error',
  kinds: ['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485'],
  scope: 'bus',
  check: (study, report) => {
    const limit = loadLimit(study.bus);
    const loads = study.unitLoads;
    if (!limit || isUnknown(loads) || loads <= limit.value) return;
    const over = formatNumber(loads - limit.value, 2);
    report({
      message: `the devices of bus ${study.bus.name} load it with ${formatNumber(loads, 2)} unit loads; ${limit.value} is ${limit.meaning} (${over} over); use ports of 1/8 unit load, or ${divideAdvice(study)}`,
      place: study.bus.place,
      severity: severityOf(limit),
      fixes: () => divideFixes(study, partTexts.loads),
    });
  },
  explanation: {
    what: 'The unit loads of all ports add up to more than a driver must carry.',
    why: 'Each receiver draws a little current; beyond 32 unit loads and two terminators a driver need not reach its 1.5 V.',
    field:
      'The bus works on the bench and grows unsure with each device that is added; levels measured under traffic are low.',
    mend: 'Divide the bus with a repeater (a fix does that where the catalogue has one that fits, with as many as are needed), or choose devices of a fraction of a unit load. A device that states none counts as unknown, and then this rule is silent.',
    bad: loadExample({ load: '1', runs: crowd(34), repeater: true }),
    good: loadExample({ load: '1', runs: crowd(21) }),
    sources: ['TIA-485-A: 32 unit loads beside two terminators'],
    since: '0.1.0',
  },
};
